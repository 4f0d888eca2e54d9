import { bigEndian, joinBytes, latinBytes } from './bytes.ts';
import { crc32 } from './crc32.ts';

/** Signature and IHDR, which always stand first. */
const AFTER_HEADER = 33;

/** The same PNG with one more chunk right behind its header. */
export function withChunk(png: Uint8Array, type: string, data: Uint8Array): Uint8Array<ArrayBuffer> {
  const body = joinBytes([latinBytes(type), data]);
  return joinBytes([
    png.subarray(0, AFTER_HEADER),
    bigEndian(data.length),
    body,
    bigEndian(crc32(body)),
    png.subarray(AFTER_HEADER),
  ]);
}
