export type Clock = () => Date

let clock: Clock = () => new Date()

/** The present instant. All other code asks here, so that a test can stand at any day. */
export function now(): Date {
  return clock()
}

/** Sets another clock, for tests; without argument, the real one again. */
export function setClock(other?: Clock): void {
  clock = other ?? (() => new Date())
}
