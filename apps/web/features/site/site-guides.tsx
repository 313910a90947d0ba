'use client'
import type { GuideLine } from '@almanac/contract/guides'
import type { SiteSoftener } from '@almanac/contract/sites'
import { guideMeasureWords } from '@almanac/records/guide-measure'
import { guideEndWords, guideStateWords } from '@almanac/records/guide-state'
import { guidePhotographWords } from '@almanac/records/picture-kind'
import { nextGuideState } from '@almanac/service-rules/guides/guide-states'
import { acrossIn } from '@almanac/softener/identify/owner-measures'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextInput } from '@almanac/ui/text-input'
import { TextLink } from '@almanac/ui/text-link'
import { formatLengthIn } from '@almanac/units/format'
import { formatInstant } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** Who looks at a hold point's photograph: the owner goes on, or reads what to fix. */
function LookAtPhoto({ guide }: { guide: GuideLine }) {
  const { api } = useSession()
  const release = useCommand(api.guides.releaseHold.mutationOptions())
  const fix = useCommand(api.guides.fixHold.mutationOptions())
  const [toFix, setToFix] = useState('')
  const named = { guideId: guide.id, version: guide.version }
  const error = release.error ?? fix.error
  return (
    <div className="mt-2 flex flex-wrap items-end gap-3">
      <Button kind="ink" busy={release.isPending} onClick={() => release.send(named)}>
        Go on
      </Button>
      <div className="min-w-0 grow basis-60">
        <TextInput label="Or what to fix first" maxLength={300} value={toFix} onChange={(event) => setToFix(event.target.value)} />
      </div>
      <Button busy={fix.isPending} disabled={toFix.trim() === ''} onClick={() => fix.send({ ...named, toFix: toFix.trim() })}>
        Send what to fix
      </Button>
      {error ? <Problem happened={readFailure(error).message} /> : null}
    </div>
  )
}

/** What the office does while the link works: sends the steps, looks at a photograph, sends somebody instead. */
function Steer({ guide }: { guide: GuideLine }) {
  const { api } = useSession()
  const send = useCommand(api.guides.sendSteps.mutationOptions())
  const visit = useCommand(api.guides.visitInstead.mutationOptions())
  const { id: guideId, version, goBeds, state, path, jobId } = guide
  const error = send.error ?? visit.error
  return (
    <>
      {state === 'looking' ? <LookAtPhoto key={version} guide={guide} /> : null}
      <div className="mt-2 flex flex-wrap gap-3">
        {path
          ? goBeds.map((bedId) => (
              <Button key={bedId} busy={send.isPending} onClick={() => send.send({ guideId, version, bedId })}>
                Send the steps
              </Button>
            ))
          : null}
        {nextGuideState(state, 'visit').ok ? (
          <Button kind="quiet" busy={visit.isPending} onClick={() => visit.send({ guideId, version })}>
            Send someone instead
          </Button>
        ) : null}
        {jobId ? <TextLink href={`/jobs/${jobId}`}>The visit</TextLink> : null}
      </div>
      {error ? <Problem happened={readFailure(error).message} /> : null}
    </>
  )
}

/** How far the owner is, and what they photographed, as it comes in. */
function Progress({ guide }: { guide: GuideLine }) {
  const display = useDisplay()
  const steps = useWords('steps')
  const { state, step, toFix, ended, photographs } = guide
  return (
    <>
      {state === 'measuring' ? null : (
        <p className="font-semibold">
          {step ? `${steps(step)}: ` : ''}
          {guideStateWords[state]}
          {state === 'trouble' && ended && ended !== 'soft' ? ` (${guideEndWords[ended]})` : ''}
        </p>
      )}
      {toFix ? <p className="text-soft">To fix: {toFix}</p> : null}
      {photographs.length > 0 ? (
        <ul aria-label={`Photos from the owner: ${guide.softenerLabel}`} className="mt-2 flex flex-wrap gap-3">
          {photographs.map(({ id, kind, at }) => (
            <li key={id} className="w-40">
              <a href={`/api/pictures/${id}`} target="_blank" rel="noreferrer">
                {/* biome-ignore lint/performance/noImgElement: it comes from behind the door, and is kept nowhere */}
                <img src={`/api/pictures/${id}`} alt={`${guidePhotographWords[kind]}, from the owner`} className="h-32 w-40 object-cover" />
              </a>
              <span className="text-small text-soft">
                {guidePhotographWords[kind]} {formatInstant(at, display)}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
    </>
  )
}

/** One link: where it leads while it works, and what the owner measured, as it comes in. */
function Guide({ guide }: { guide: GuideLine }) {
  const display = useDisplay()
  const { api, me } = useSession()
  const withdraw = useCommand(api.guides.withdraw.mutationOptions())
  const { id, version, path, entries, softenerLabel, createdAt, linkUntil } = guide
  return (
    <li className="border-b border-line py-3">
      <p className="text-small text-soft">
        {softenerLabel}, link made {formatInstant(createdAt, display)};{' '}
        {path ? `works until ${formatInstant(linkUntil, display)}` : 'ended'}
      </p>
      {entries.length === 0 ? <p className="text-soft">Nothing measured yet. Entries appear here as they come in.</p> : null}
      <ul aria-label={`Measured by the owner: ${softenerLabel}`}>
        {entries.map(({ measure, valueIn, at }) => (
          <li key={measure}>
            {guideMeasureWords[measure]}: <span className="font-semibold">{formatLengthIn(valueIn, me.company)}</span>
            {measure === 'around' ? `, about ${formatLengthIn(Math.round(acrossIn(valueIn)), me.company)} across` : ''}
            <span className="text-small text-soft"> {formatInstant(at, display)}</span>
          </li>
        ))}
      </ul>
      <Progress guide={guide} />
      <Steer guide={guide} />
      {withdraw.error ? <Problem happened={readFailure(withdraw.error).message} /> : null}
      {path ? (
        <div className="mt-2 flex flex-wrap items-end gap-3">
          <div className="min-w-0 grow basis-60">
            <TextInput
              label="The owner’s link"
              hint="Whoever has it can measure this tank, send photos, and see the steps once you send them."
              readOnly
              value={`${location.origin}${path}`}
              onFocus={(event) => event.target.select()}
            />
          </div>
          <Button kind="quiet" busy={withdraw.isPending} onClick={() => withdraw.send({ guideId: id, version })}>
            End the link
          </Button>
        </div>
      ) : null}
    </li>
  )
}

/** An owner measures their tank by a link on their phone, while the office watches what comes in. */
export function SiteGuides({ siteId, softeners }: { siteId: string; softeners: readonly SiteSoftener[] }) {
  const { api } = useSession()
  const query = useQuery(api.guides.ofSite.queryOptions({ input: { siteId } }))
  const begin = useCommand(api.guides.begin.mutationOptions())
  if (softeners.length === 0) return null
  return (
    <Section title="Owner measures">
      {query.error ? <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} /> : null}
      {begin.error ? <Problem happened={readFailure(begin.error).message} /> : null}
      {query.isPending ? <Skeleton lines={2} label="Loading what was measured" /> : null}
      {query.data?.length === 0 ? <p className="text-soft">Make a link, and the owner measures the tank on their phone.</p> : null}
      {query.data && query.data.length > 0 ? (
        <ul className="border-t border-line">
          {query.data.map((one) => (
            <Guide key={one.id} guide={one} />
          ))}
        </ul>
      ) : null}
      <div className="mt-3 flex flex-wrap gap-3">
        {softeners.map((one) => (
          <Button key={one.id} busy={begin.isPending} onClick={() => begin.send({ softenerId: one.id })}>
            {softeners.length === 1 ? 'Make a measuring link' : `Make a link: ${one.label}`}
          </Button>
        ))}
      </div>
    </Section>
  )
}
