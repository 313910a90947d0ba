import { useState } from 'react'

/** The sign-in library's own refusals in the app's words. */
const WORDS: Record<string, string> = {
  INVALID_PASSWORD: 'The present password is wrong. Nothing was changed; check it and try again.',
  INVALID_CODE: 'This code is not right, or is no longer valid. Nothing was changed; enter the one that your app shows now.',
}

const LOCK = 'own-account'
// Browsers have locks on pages of their own machine and by https only.
const locks = () => ('locks' in navigator ? (navigator.locks as LockManager | undefined) : undefined)

/** Does something once no change of one's own sign-in is on its way, in any window of the browser: such a change may end the session and bring another in its answer. */
export function onceAccountStands(work: () => void): void {
  const held = locks()
  if (held) void held.request(LOCK, async () => work())
  else work()
}

/** Sends a change of one's own sign-in over the sign-in library's own ways; answers what it said, or null where it did not work: `problem` says why. */
export function useOwnAccount() {
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const send = async <T>(path: string, body: object): Promise<T | null> => {
    setBusy(true)
    setProblem(undefined)
    try {
      const ask = () =>
        fetch(`/api/auth/${path}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
      const answer = await (locks()?.request(LOCK, ask) ?? ask())
      const said = (await answer.json()) as T & { code?: string; message?: string }
      if (answer.ok) return said
      setProblem(WORDS[said.code ?? ''] ?? said.message ?? 'The server could not do this just now. Nothing was changed; try again.')
    } catch {
      setProblem('Can’t reach the server. Nothing was changed; try again when you have a connection.')
    } finally {
      setBusy(false)
    }
    return null
  }
  return { send, problem, busy }
}
