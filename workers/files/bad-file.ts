/** A file that cannot be used. The message is one complete line: the file, what is wrong, what to do. */
export class BadFile extends Error {
  override readonly name = 'BadFile';
}

/** Makes the complaint about one file from "what is wrong; what to do". */
export type Complain = (what: string) => BadFile;

/** A {@link Complain} that begins every line with the file's name; what would break the line becomes a space. */
export function complainAbout(fileName: string): Complain {
  return (what) => new BadFile(`${fileName}: ${what}`.replace(/\p{Cc}+/gu, ' '));
}
