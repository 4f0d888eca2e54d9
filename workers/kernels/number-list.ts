/** A list of whole numbers 0..2^32-1 that grows. */
export class NumberList {
  length = 0;
  #room = new Uint32Array(1024);

  push(value: number): void {
    if (this.length === this.#room.length) {
      const larger = new Uint32Array(this.length * 2);
      larger.set(this.#room);
      this.#room = larger;
    }
    this.#room[this.length++] = value;
  }

  /** A view of what the list holds now. */
  values(): Uint32Array<ArrayBuffer> {
    return this.#room.subarray(0, this.length);
  }
}
