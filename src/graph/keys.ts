import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** JSON with sorted keys and no spaces: equal values give equal text. Undefined fields are left out. */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (value !== null && typeof value === 'object') {
    const fields = Object.entries(value)
      .filter(([, field]) => field !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, field]) => `${JSON.stringify(name)}:${canonicalJson(field)}`);
    return `{${fields.join(',')}}`;
  }
  return JSON.stringify(value);
}

/** SHA-256 of the canonical JSON of a value, in hex: equal work has equal keys. */
export function contentKey(value: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(value))));
}

/** The name of an asset: SHA-256 of its bytes, in hex. */
export function hashBytes(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}
