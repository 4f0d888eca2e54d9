/** Everything but the delimiters and `#`, which a name spells in hex (ISO 32000-1, 7.3.5). */
const PLAIN_IN_NAME = /[A-Za-z0-9!"$&'*+,.:;=?@\\^_`|~-]/;

/** A name object of any text: its UTF-8 bytes, those that a name cannot hold spelled `#xx`. */
export function pdfName(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const spelled = Array.from(bytes, (byte) => {
    const char = String.fromCharCode(byte);
    return PLAIN_IN_NAME.test(char) ? char : `#${hex(byte, 2)}`;
  });
  return `/${spelled.join('')}`;
}

/** A text string in UTF-16BE (ISO 32000-1, 7.9.2.2), written in hex. */
export function textString(text: string): string {
  const units = Array.from({ length: text.length }, (_, i) => hex(text.charCodeAt(i), 4));
  return `<FEFF${units.join('')}>`;
}

/** A number with at most five decimals and no exponent. */
export function number(value: number): string {
  return String(Number(value.toFixed(5)));
}

/** Numbers apart by spaces. */
export function numbers(values: readonly number[]): string {
  return values.map(number).join(' ');
}

function hex(value: number, digits: number): string {
  return value.toString(16).toUpperCase().padStart(digits, '0');
}
