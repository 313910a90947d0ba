'use client'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'

/** What a page says that broke while it was shown: the frame around it stays, so there is a way on. */
export function PageError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  const words = useWords('failure')
  return <Problem happened={words('page')} kept={words('pageKept')} onRetry={reset} reference={error.digest} />
}
