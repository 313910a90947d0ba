import { useWords } from '@almanac/words/use-words'
import { useState } from 'react'

/**
 * Sends what a link that works once is for, and goes on: signed in to the first page, or to the sign-in where signing in was held up. `problem` is the sentence to
 * show where it did not work.
 */
export function useSendOnce(path: string) {
  const words = useWords('join')
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  const send = async (body: unknown) => {
    setBusy(true)
    setProblem(undefined)
    try {
      const answer = await fetch(path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })
      const said = (await answer.json()) as { message?: string; signedIn?: boolean }
      if (answer.ok) return location.assign(said.signedIn ? '/' : '/sign-in')
      setProblem(said.message)
    } catch {
      setProblem(words('unreachable'))
    }
    setBusy(false)
  }
  return { send, problem, busy }
}
