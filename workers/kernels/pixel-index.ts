/** Which entries stand at a pixel: a hash table of pixel indices with chains of entries. */
export class PixelIndex {
  readonly #mask: number;
  /** Pixel + 1 by slot, 0 for a free one. */
  readonly #pixels: Uint32Array;
  /** Entry + 1 that was added last, by slot. */
  readonly #heads: Uint32Array;
  /** Entry + 1 that was added before, by place in the chains. */
  readonly #before: Uint32Array;
  readonly #entries: Uint32Array;
  #length = 0;

  /** @param most how many entries will be added */
  constructor(most: number) {
    const slots = 2 ** Math.ceil(Math.log2(2 * most + 2));
    this.#mask = slots - 1;
    this.#pixels = new Uint32Array(slots);
    this.#heads = new Uint32Array(slots);
    this.#before = new Uint32Array(most + 1);
    this.#entries = new Uint32Array(most + 1);
  }

  add(pixel: number, entry: number): void {
    const slot = this.#slotOf(pixel);
    this.#pixels[slot] = pixel + 1;
    this.#length++;
    this.#entries[this.#length] = entry;
    this.#before[this.#length] = this.#heads[slot]!;
    this.#heads[slot] = this.#length;
  }

  /** Place in the chains of the entry that was added last at a pixel, 0 for none. */
  lastAt(pixel: number): number {
    return this.#heads[this.#slotOf(pixel)]!;
  }

  /** The place of the entry before, 0 for none. */
  before(place: number): number {
    return this.#before[place]!;
  }

  entry(place: number): number {
    return this.#entries[place]!;
  }

  #slotOf(pixel: number): number {
    let slot = Math.imul(pixel, 0x9e3779b1) >>> 0;
    slot = (slot ^ (slot >>> 15)) & this.#mask;
    while (this.#pixels[slot] !== 0 && this.#pixels[slot] !== pixel + 1) slot = (slot + 1) & this.#mask;
    return slot;
  }
}
