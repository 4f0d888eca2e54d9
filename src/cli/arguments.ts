import { type ParseArgsConfig, parseArgs } from 'node:util';
import { BadUse } from './outcome.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/**
 * Reads the arguments of a command.
 *
 * @param usage shown when they do not fit
 * @param files how many file arguments it takes
 * @throws BadUse
 */
export function readArguments<const Known extends Options>(
  args: string[],
  options: Known,
  files: number,
  usage: string,
) {
  const read = readSome(args, options, usage);
  if (read.files.length !== files)
    throw new BadUse(`${read.files.length} files given, ${files} expected. Usage: ${usage}`);
  return read;
}

/** Reads the arguments of a command that takes any number of files. @throws BadUse */
export function readSome<const Known extends Options>(args: string[], options: Known, usage: string) {
  try {
    const { values, positionals } = parseArgs({ args, options, allowPositionals: true, strict: true });
    return { values, files: positionals };
  } catch (error) {
    throw misuse(error, usage);
  }
}

function misuse(error: unknown, usage: string): BadUse {
  const said = (error as Error).message.split('.')[0]!.replace(/\s+/g, ' ');
  return new BadUse(`${said}. Usage: ${usage}`);
}

/** A number within a range. @throws BadUse naming the option */
export function numberOf(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (text.trim() === '' || !(value >= least && value <= most))
    throw new BadUse(`--${option} takes a number from ${least} to ${most}, not "${text}"`);
  return value;
}

/** A whole number within a range. @throws BadUse naming the option */
export function wholeOf(option: string, text: string, least: number, most: number): number {
  const value = numberOf(option, text, least, most);
  if (!Number.isInteger(value)) throw new BadUse(`--${option} takes a whole number, not "${text}"`);
  return value;
}
