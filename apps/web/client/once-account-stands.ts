export const LOCK = 'own-account'
// Browsers have locks on pages of their own machine and by https only.
export const locks = () => ('locks' in navigator ? (navigator.locks as LockManager | undefined) : undefined)

/** Does something once no change of one's own sign-in is on its way, in any window of the browser: such a change may end the session and bring another in its answer. */
export function onceAccountStands(work: () => void): void {
  const held = locks()
  if (held) void held.request(LOCK, async () => work())
  else work()
}
