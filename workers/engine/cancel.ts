/** Work stopped because the person asked for it. */
export class Cancelled extends Error {
  override readonly name = 'Cancelled';
  constructor() {
    super('cancelled');
  }
}

/** A flag in shared memory: workers look at it between bands, whoever holds it can raise it at any time. */
export type CancelFlag = Int32Array<SharedArrayBuffer>;

export function cancelFlag(): CancelFlag {
  return new Int32Array(new SharedArrayBuffer(4));
}

export function raise(flag: CancelFlag): void {
  Atomics.store(flag, 0, 1);
}

export function isRaised(flag: CancelFlag): boolean {
  return Atomics.load(flag, 0) !== 0;
}

/** @throws Cancelled once the flag is raised */
export function stopIfRaised(flag: CancelFlag): void {
  if (isRaised(flag)) throw new Cancelled();
}
