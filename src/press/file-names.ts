const TOKENS = ['job', 'size', 'order', 'plate', 'ink', 'colourway', 'side'] as const;
const TOKEN = /\{([^{}]*)\}/g;

/** What the tokens of a pattern stand for. */
export type NameParts = Record<(typeof TOKENS)[number], string>;

const LONGEST_PART = 60;
const LONGEST_NAME = 150;

/** A name as part of a file name: letters, digits and dashes of any script, at most 60 characters. */
export function fileStem(name: string): string {
  return cleaned(name, LONGEST_PART);
}

function cleaned(name: string, longest: number): string {
  const stem = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, longest);
  return stem === '' ? 'untitled' : stem;
}

/** What is wrong with a pattern of file names; null where nothing is. */
export function patternProblem(pattern: string): string | null {
  const known: readonly string[] = TOKENS;
  const unknown = [...pattern.matchAll(TOKEN)]
    .map(([, token]) => token!)
    .find((token) => !known.includes(token));
  if (unknown !== undefined)
    return `there is no {${unknown}}; use ${TOKENS.map((token) => `{${token}}`).join(', ')}`;
  if (/[{}]/.test(pattern.replace(TOKEN, ''))) return 'a brace is not closed';
  return null;
}

/** The name of a plate's file without its ending. */
export function plateFileStem(pattern: string, parts: NameParts): string {
  const filled = pattern.replace(TOKEN, (_, token: keyof NameParts) => fileStem(parts[token]));
  return cleaned(filled, LONGEST_NAME);
}
