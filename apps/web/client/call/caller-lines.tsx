'use client'
import type { CallSite } from '@almanac/contract/calls'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Notice } from '@almanac/ui/notice'
import { Problem } from '@almanac/ui/problem'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useRef } from 'react'
import { answerLink } from '../answer-place.ts'
import { readFailure } from '../failure.ts'
import { WhomLine } from '../whom-line.tsx'
import { aboutWords, saidWords } from './call-words.ts'
import type { Caller } from './who-field.tsx'

/** Opens beside the call, which stays as it is. */
function Beside({ href, children }: { href: string; children: string }) {
  return (
    <a href={href} target="_blank" rel="noreferrer" className="underline decoration-edge underline-offset-4">
      {children}
    </a>
  )
}

/** What to ask while they talk: the answer that narrows a due date most. Whether the water is soft has its own two answers below. */
function AskNow({ site }: { site: CallSite }) {
  const words = useWords('bed')
  const asking = site.softeners.find((one) => one.question !== null && one.question !== 'last-seen' && one.bedId !== null)
  if (!asking?.question || !asking.bedId) return null
  const { href, act } = answerLink(asking.question, { bedId: asking.bedId, siteId: site.siteId })
  return (
    <p className="text-small">
      <span className="font-semibold">Ask: </span>
      {words(`question/${asking.question}`)} <Beside href={href}>{words(act)}</Beside>
    </p>
  )
}

type Props = { caller: Caller; site: CallSite | undefined; error: Error | null; onOther: () => void }

/** Who is on the phone, what we owe them, what they said last, and what to ask. */
export function CallerLines({ caller, site, error, onOther }: Props) {
  const display = useDisplay()
  // The field that had the focus is gone once somebody is chosen: Tab goes on from here.
  const lines = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const opened = setTimeout(() => lines.current?.focus())
    return () => clearTimeout(opened)
  }, [])
  const last = site?.calls[0]
  const said = last && saidWords(last, display)
  return (
    <div ref={lines} tabIndex={-1} className="flex flex-col gap-2 border-b border-line pb-3 outline-none">
      <div className="flex items-start justify-between gap-3">
        <div className="min-w-0">
          <p className="font-semibold">
            {site ? [site.siteLabel, site.town].filter(Boolean).join(', ') : caller.siteId === null ? 'Not on record' : caller.what}
          </p>
          {site ? (
            <p>
              <WhomLine whom={site.whom} />
            </p>
          ) : null}
        </div>
        <Button kind="quiet" onClick={onOther}>
          Someone else
        </Button>
      </div>
      {error ? <Problem happened={readFailure(error).message} /> : null}
      {caller.siteId === null ? (
        <p className="text-small text-soft">
          A visit needs a site. Call back, or <TextLink href="/sites/new">add the site</TextLink> first.
        </p>
      ) : null}
      {site?.callBacks.map((row) => (
        <Notice key={row.id} kind="mind">
          {aboutWords(row, display)}
        </Notice>
      ))}
      {last ? (
        <p className="text-small text-soft">
          Last call {formatInstant(last.at, display)}
          {said ? `: ${said}` : ''}
        </p>
      ) : null}
      {site ? <AskNow site={site} /> : null}
      <p className="flex flex-wrap gap-x-4 text-small">
        <Beside href="/whats-wrong">What is wrong?</Beside>
        <Beside href="/which-tank">Which tank?</Beside>
        {site ? <Beside href={`/sites/${site.siteId}`}>Open the site</Beside> : null}
      </p>
    </div>
  )
}
