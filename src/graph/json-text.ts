import { BadInput } from './complaint.ts';

const FORBIDDEN_KEYS = new Set(['__proto__', 'constructor', 'prototype']);

/** Deepest nesting of a file: far above any real one, below what a checker's stack bears. */
const MOST_DEPTH = 64;

/**
 * The value of a JSON text, a byte order mark before it or not.
 *
 * @param what names the kind of file in messages
 * @throws BadInput for text that is no JSON, is nested more than 64 deep or holds names of an object's own works
 */
export function readJson(text: string, what: string): unknown {
  const value = parsed(text);
  refuseForbiddenKeys(value, what);
  return value;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    const detail = (error as Error).message.replace(/\s+/g, ' ').slice(0, 120);
    throw new BadInput(`this is not valid JSON (${detail}); numbers such as NaN are not allowed in it`);
  }
}

function refuseForbiddenKeys(value: unknown, what: string): void {
  const open = [{ value, depth: 0 }];
  while (open.length > 0) {
    const at = open.pop()!;
    if (at.value === null || typeof at.value !== 'object') continue;
    if (at.depth > MOST_DEPTH)
      throw new BadInput(`the ${what} is nested more than ${MOST_DEPTH} deep; it is damaged`);
    for (const [key, field] of Object.entries(at.value)) {
      if (FORBIDDEN_KEYS.has(key))
        throw new BadInput(`the ${what} holds a field named "${key}", which no ${what} has; it is damaged`);
      open.push({ value: field, depth: at.depth + 1 });
    }
  }
}
