import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, contentKey, hashBytes } from '../../../src/graph/keys.ts';

/** The same value with the fields of every object in reverse order. */
function backwards(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(backwards);
  if (value === null || typeof value !== 'object') return value;
  const fields = Object.entries(value).reverse();
  const turned: Record<string, unknown> = Object.create(null);
  for (const [name, field] of fields) turned[name] = backwards(field);
  return turned;
}

describe('canonical JSON', () => {
  it('sorts fields and leaves no spaces', () => {
    expect(canonicalJson({ b: [1, { z: 'x', a: null }], a: true })).toBe(
      '{"a":true,"b":[1,{"a":null,"z":"x"}]}',
    );
  });

  it('leaves undefined fields out, at any depth', () => {
    expect(canonicalJson({ a: undefined, b: { c: undefined }, d: 1 })).toBe('{"b":{},"d":1}');
  });

  it('keeps the order of lists', () => {
    expect(canonicalJson([3, 1, 2])).toBe('[3,1,2]');
  });

  it('tells numbers from their text and null from nothing', () => {
    const texts = [1, '1', true, 'true', null, 'null', [], {}, [null], ''].map(canonicalJson);
    expect(new Set(texts).size).toBe(texts.length);
  });

  it('reads back as the value it was made from', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const plain: unknown = JSON.parse(JSON.stringify(value));
        expect(JSON.parse(canonicalJson(plain))).toEqual(plain);
      }),
    );
  });

  it('does not depend on the order of fields', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => canonicalJson(backwards(value)) === canonicalJson(value)),
    );
  });
});

describe('the content key', () => {
  it('is the SHA-256 of the canonical JSON', () => {
    // printf '{"a":1}' | sha256sum
    expect(contentKey({ a: 1, b: undefined })).toBe(
      '015abd7f5cc57a2dd94b7590f04ad8084273905ee33ec5cebeae62276a97f862',
    );
  });

  it('is the same for equal values and another for different ones', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (a, b) => {
        const same = canonicalJson(a) === canonicalJson(b);
        return (contentKey(a) === contentKey(b)) === same && contentKey(a) === contentKey(structuredClone(a));
      }),
    );
  });

  it('tells every setting of a node from every other value of it', () => {
    const keys = [0.5, 0.50001, '0.5', null, undefined, [0.5]].map((gapMm) =>
      contentKey({ kind: 'x', gapMm }),
    );
    expect(new Set(keys).size).toBe(keys.length);
  });
});

describe('the name of an asset', () => {
  it('is the SHA-256 of its bytes, in hex', () => {
    // FIPS 180-2, appendix B.1: "abc"
    expect(hashBytes(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
    expect(hashBytes(new Uint8Array())).toBe(
      'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
    );
  });
});
