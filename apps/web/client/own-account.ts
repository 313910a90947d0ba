import { useState } from 'react'

/** The sign-in library's own refusals in the app's words. */
const WORDS: Record<string, string> = {
  INVALID_PASSWORD: 'The present password is wrong. Nothing was changed; check it and try again.',
  INVALID_CODE: 'This code is not right, or is no longer valid. Nothing was changed; enter the one that your app shows now.',
}

/** Sends a change of one's own sign-in over the sign-in library's own ways; answers what it said, or null where it did not work: `problem` says why. */
export function useOwnAccount() {
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const send = async <T>(path: string, body: object): Promise<T | null> => {
    setBusy(true)
    setProblem(undefined)
    try {
      const answer = await fetch(`/api/auth/${path}`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      })
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
