import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'
import { LOCK, locks } from './once-account-stands.ts'

/** The sign-in library's own refusals in the app's words. */
const REFUSALS = {
  INVALID_PASSWORD: 'wrongPassword',
  INVALID_CODE: 'wrongCode',
  CHALLENGE_NOT_FOUND: 'passkeyTooLate',
  FAILED_TO_VERIFY_REGISTRATION: 'passkeyStopped',
} as const

/** Sends a change of one's own sign-in over the sign-in library's own ways; answers what it said, or null where it did not work: `problem` says why. */
export function useOwnAccount() {
  const words = useWords('ownAccount')
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
      const refusal = REFUSALS[said.code as keyof typeof REFUSALS] as (typeof REFUSALS)[keyof typeof REFUSALS] | undefined
      setProblem(refusal ? words(refusal) : (said.message ?? words('notNow')))
    } catch {
      setProblem(words('unreachable'))
    } finally {
      setBusy(false)
    }
    return null
  }
  return { send, problem, busy }
}
