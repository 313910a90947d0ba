'use client'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { Button } from './button.tsx'

export type ProblemProps = {
  /** What happened, in one sentence. */
  happened: ReactNode
  /** What was kept and what was not. */
  kept?: ReactNode
  /** What the person can do about it. */
  todo?: ReactNode
  onRetry?: () => void
  retrying?: boolean
  /** For a call to the firm's support: the number under which this is logged. */
  reference?: string
}

/** An error, told so that a person can act: what happened, what was kept, what to do. Spoken at once. */
export function Problem({ happened, kept, todo, onRetry, retrying, reference }: ProblemProps) {
  const words = useWords('common')
  return (
    <div role="alert" className="my-4 max-w-[75ch] border-l-4 border-danger bg-wash px-4 py-3">
      <p className="flex items-baseline gap-2 font-semibold text-danger">
        <svg
          aria-hidden="true"
          width="14"
          height="13"
          viewBox="0 0 14 13"
          className="shrink-0 translate-y-px fill-none stroke-current stroke-[1.6]"
        >
          <path d="M7 1 L13.2 12.2 H0.8 Z M7 5 V8.4 M7 9.6 V11" />
        </svg>
        <span>{happened}</span>
      </p>
      {kept ? <p className="mt-1">{kept}</p> : null}
      {todo ? <p className="mt-1">{todo}</p> : null}
      {onRetry || reference ? (
        <div className="mt-3 flex flex-wrap items-center gap-4">
          {onRetry ? (
            <Button onClick={onRetry} busy={retrying} busyLabel={words('tryingAgain')}>
              {words('tryAgain')}
            </Button>
          ) : null}
          {reference ? <span className="text-small text-soft">{words('reference', { id: reference })}</span> : null}
        </div>
      ) : null}
    </div>
  )
}
