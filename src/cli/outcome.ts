import { basename } from 'node:path';
import type { Complaint } from '../graph/complaint.ts';

/** Exit codes of every command. */
export const DONE = 0;
export const FAULTS = 1;
export const BAD_INPUT = 2;

/** Wrong use of a command. */
export class BadUse extends Error {
  override readonly name = 'BadUse';
}

/** Names of errors whose message is meant for the person as it stands. */
const FOR_THE_PERSON = new Set(['BadInput', 'BadFile', 'BadUse', 'TooSlow', 'OutOfReach', 'Cancelled']);

/** One line for stderr; `subject` is the path of the file the command was about. */
export function lineFor(error: unknown, subject: string | null): string {
  const { name, message } = error instanceof Error ? error : new Error(String(error));
  const text = message.replace(/\s+/g, ' ').trim();
  const said = FOR_THE_PERSON.has(name) ? text : `something went wrong that should not (${name}: ${text})`;
  if (subject === null || name === 'BadUse') return `keyblock: ${said}`;
  const named = `${basename(subject)}: `;
  return `keyblock: ${subject}: ${said.startsWith(named) ? said.slice(named.length) : said}`;
}

/** The exit code that a finished job deserves. */
export function codeOf(complaints: readonly Complaint[]): number {
  return complaints.some(({ severity, meant }) => severity === 'error' && !meant) ? FAULTS : DONE;
}
