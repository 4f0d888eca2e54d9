/** Idle buffers kept for reuse, at most. */
const MOST_IDLE_BYTES = 256 * 1024 * 1024;

/**
 * The owner of all shared memory. Buffers count their holders; one without holders is reused for the next plane of
 * its size. A taken buffer holds whatever it held before: kernels write every byte of what they give out.
 */
export class PlanePool {
  readonly #holders = new Map<SharedArrayBuffer, number>();
  readonly #idle: SharedArrayBuffer[] = [];
  #liveBytes = 0;
  #idleBytes = 0;
  #peakBytes = 0;

  /** Bytes in buffers that somebody holds. */
  get liveBytes(): number {
    return this.#liveBytes;
  }

  /** The most bytes that were ever held at once. */
  get peakBytes(): number {
    return this.#peakBytes;
  }

  /** A buffer of exactly `bytes` bytes with one holder. */
  take(bytes: number): SharedArrayBuffer {
    const at = this.#idle.findIndex((buffer) => buffer.byteLength === bytes);
    const buffer = at < 0 ? new SharedArrayBuffer(bytes) : this.#idle.splice(at, 1)[0]!;
    if (at >= 0) this.#idleBytes -= bytes;
    this.adopt(buffer);
    return buffer;
  }

  /** Takes over a buffer that was made elsewhere, with one holder. */
  adopt(buffer: SharedArrayBuffer): void {
    this.#holders.set(buffer, 1);
    this.#liveBytes += buffer.byteLength;
    this.#peakBytes = Math.max(this.#peakBytes, this.#liveBytes);
  }

  retain(buffer: SharedArrayBuffer): void {
    this.#holders.set(buffer, this.#holdersOf(buffer) + 1);
  }

  release(buffer: SharedArrayBuffer): void {
    const holders = this.#holdersOf(buffer) - 1;
    if (holders > 0) {
      this.#holders.set(buffer, holders);
      return;
    }
    this.#holders.delete(buffer);
    this.#liveBytes -= buffer.byteLength;
    this.#idle.push(buffer);
    this.#idleBytes += buffer.byteLength;
    while (this.#idleBytes > MOST_IDLE_BYTES) this.#idleBytes -= this.#idle.shift()!.byteLength;
  }

  #holdersOf(buffer: SharedArrayBuffer): number {
    const holders = this.#holders.get(buffer);
    if (holders === undefined) throw new Error('a buffer was released that nobody holds');
    return holders;
  }
}
