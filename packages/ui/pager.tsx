'use client'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { Button } from './button.tsx'
import { LinkButton } from './link-button.tsx'
import type { LinkLike } from './link-like.ts'

export type PagerProps = {
  /** What stands on this page: "50 of 1,486 beds". */
  summary?: ReactNode
  /** Addresses of the neighbouring pages (cursors in the query), or … */
  previousHref?: string
  nextHref?: string
  /** … what to do instead. */
  onPrevious?: () => void
  onNext?: () => void
  busy?: boolean
  link?: LinkLike
}

/** Previous and next by cursor; nothing is shown when there is only one page and no summary. */
export function Pager({ summary, previousHref, nextHref, onPrevious, onNext, busy, link }: PagerProps) {
  const words = useWords('common')
  const back = previousHref ?? onPrevious
  const on = nextHref ?? onNext
  if (!back && !on && !summary) return null
  const step = (label: string, href?: string, go?: () => void) =>
    href ? (
      <LinkButton href={href} link={link}>
        {label}
      </LinkButton>
    ) : go ? (
      <Button onClick={go} busy={busy}>
        {label}
      </Button>
    ) : null
  return (
    <nav aria-label={words('pages')} className="flex flex-wrap items-center justify-between gap-4 py-4">
      <span className="text-small text-soft">{summary}</span>
      <span className="flex gap-3">
        {step(words('previous'), previousHref, onPrevious)}
        {step(words('next'), nextHref, onNext)}
      </span>
    </nav>
  )
}
