import { joinBytes, latinBytes } from '../bytes.ts';

const BINARY_MARK = '%\xe2\xe3\xcf\xd3';

/** `n 0 R` of an object. */
export type Ref = `${number} 0 R`;

/** The objects of one PDF file, numbered as they are added; the same objects always give the same bytes. */
export class PdfBuilder {
  readonly #bodies: Uint8Array[][] = [];

  /** Adds an object written out. */
  add(body: string): Ref {
    return this.#push([latinBytes(body)]);
  }

  /** Adds a stream. @param entries of its dictionary, without its length */
  stream(entries: string, data: Uint8Array): Ref {
    const head = latinBytes(`<< ${entries} /Length ${data.length} >>\nstream\n`);
    return this.#push([head, data, latinBytes('\nendstream')]);
  }

  /** The number the object after `ahead` more will get, for objects that name one another. */
  next(ahead = 0): Ref {
    return `${this.#bodies.length + 1 + ahead} 0 R`;
  }

  /** The file. @param trailer entries such as `/Root 1 0 R` */
  finish(version: '1.4' | '1.6', trailer: string): Uint8Array<ArrayBuffer> {
    const parts: Uint8Array[] = [latinBytes(`%PDF-${version}\n${BINARY_MARK}\n`)];
    let length = parts[0]!.length;
    const offsets = this.#bodies.map((body, i) => {
      const object = [latinBytes(`${i + 1} 0 obj\n`), ...body, latinBytes('\nendobj\n')];
      const offset = length;
      for (const part of object) length += part.length;
      parts.push(...object);
      return offset;
    });
    const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
    const size = this.#bodies.length + 1;
    parts.push(
      latinBytes(
        `xref\n0 ${size}\n0000000000 65535 f \n${rows}trailer\n` +
          `<< /Size ${size} ${trailer} >>\nstartxref\n${length}\n%%EOF\n`,
      ),
    );
    return joinBytes(parts);
  }

  #push(body: Uint8Array[]): Ref {
    this.#bodies.push(body);
    return `${this.#bodies.length} 0 R`;
  }
}
