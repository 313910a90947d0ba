'use client'
import type { AgreementCard, TurnLine } from '@almanac/contract/agreements'
import type { SiteSoftener } from '@almanac/contract/sites'
import { agreementEndWords, agreementKindWords } from '@almanac/records/agreement'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { TextLink } from '@almanac/ui/text-link'
import { formatHardnessGpg } from '@almanac/units/format'
import { formatDay } from '@almanac/units/format-day'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import { useState } from 'react'
import { everyWords, priceWords } from '@/client/agreements/agreement-words'
import { RenewAgreement } from '@/client/agreements/renew-agreement'
import { SettleTurn } from '@/client/agreements/settle-turn'
import { readFailure } from '@/client/failure'
import { usePermission, useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useMoney } from '@/client/use-money'
import { AddAgreement } from './add-agreement.tsx'
import { EndAgreement } from './end-agreement.tsx'

const SALT_WORDS = { enough: 'salt enough', low: 'salt low', bridged: 'salt bridged', empty: 'no salt' } as const

/** One turn: when it was due, what became of it, and what was read. */
function TurnRow({ agreementId, turn, maySettle }: { agreementId: string; turn: TurnLine; maySettle: boolean }) {
  const display = useDisplay()
  const { api } = useSession()
  const [settling, setSettling] = useState(false)
  const reopen = useCommand(api.agreements.settleTurn.mutationOptions())
  const { dueDay, version, standing, late, job } = turn
  const due = formatDay(dueDay, display)
  const state =
    standing === 'done' ? (
      <StatusWord shape="tick" tone="done">
        done{turn.doneDay ? ` ${formatDay(turn.doneDay, display)}` : ''}
      </StatusWord>
    ) : standing === 'skipped' ? (
      <StatusWord shape="cross" tone="soft">
        skipped
      </StatusWord>
    ) : late ? (
      <StatusWord shape="triangle" tone="danger">
        not done
      </StatusWord>
    ) : (
      <StatusWord shape={job ? 'dot' : 'dashed'} tone="soft">
        {job ? 'job added' : 'to come'}
      </StatusWord>
    )
  const readings = [
    turn.outletHardnessGpg === null ? null : `softened water ${formatHardnessGpg(turn.outletHardnessGpg, display)}`,
    turn.salt && SALT_WORDS[turn.salt],
    turn.reason,
  ].filter(Boolean)
  const byHand = standing === 'skipped' || (standing === 'done' && job === null)
  return (
    <li className="flex flex-wrap items-baseline gap-x-4 py-1 text-small">
      <span className="w-32">{due}</span>
      <span className="grow basis-40">
        {state}
        {readings.length > 0 ? <span className="text-soft"> {readings.join(', ')}</span> : null}
      </span>
      {job ? (
        <TextLink href={`/jobs/${job.id}`} link={Link}>
          Job
        </TextLink>
      ) : null}
      {maySettle && standing === 'open' ? (
        <Button kind="quiet" onClick={() => setSettling(true)} aria-label={`Done or skip, due ${due}`}>
          Done or skip
        </Button>
      ) : null}
      {maySettle && byHand ? (
        <Button
          kind="quiet"
          busy={reopen.isPending}
          onClick={() => reopen.send({ agreementId, dueDay, version, outcome: 'open', doneDay: null, reason: '' })}
          aria-label={`Reopen, due ${due}`}
        >
          Reopen
        </Button>
      ) : null}
      {reopen.error ? <Problem happened={readFailure(reopen.error).message} /> : null}
      {settling ? <SettleTurn turn={{ agreementId, dueDay, version }} onClose={() => setSettling(false)} /> : null}
    </li>
  )
}

/** How long it is agreed, or that it ended and why. */
function lastWords({ endedDay, endWhy, untilDay }: AgreementCard, show: (day: string) => string): string {
  if (endedDay && endWhy) return endWhy === 'mistake' ? agreementEndWords.mistake : `${agreementEndWords[endWhy]}, ${show(endedDay)}`
  return untilDay ? `until ${show(untilDay)}` : 'no end agreed'
}

function Card({ agreement, mayChange, maySettle }: { agreement: AgreementCard; mayChange: boolean; maySettle: boolean }) {
  const display = useDisplay()
  const money = useMoney()
  const [form, setForm] = useState<'renew' | 'end' | null>(null)
  const show = (day: string) => formatDay(day, display)
  const { kind, every, softenerLabel, price, terms, turns, notes, endedDay } = agreement
  const name = agreementKindWords[kind]
  return (
    <li className="border-b border-line py-3">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4 gap-y-1">
        <span className={endedDay ? 'text-soft' : undefined}>
          <span className="font-semibold">{name}</span>, {everyWords(every)}
          {softenerLabel ? `, ${softenerLabel}` : ''}
          <span className="block text-small text-soft">
            {priceWords(price, money.words)}, {lastWords(agreement, show)}
          </span>
        </span>
        {mayChange && endedDay === null ? (
          <span className="flex gap-2">
            <Button kind="quiet" onClick={() => setForm('renew')} aria-label={`Renew: ${name}`}>
              Renew
            </Button>
            <Button kind="quiet" onClick={() => setForm('end')} aria-label={`End: ${name}`}>
              End
            </Button>
          </span>
        ) : null}
      </div>
      {notes ? <p className="text-small">{notes}</p> : null}
      {terms.length > 1 ? (
        <p className="text-small text-soft">
          Price lines: {terms.map((term) => `from ${show(term.fromDay)} ${priceWords(term.price, money.words)}`).join('; ')}
        </p>
      ) : null}
      <ul aria-label={`When due: ${name}`}>
        {turns.map((turn) => (
          <TurnRow key={turn.dueDay} agreementId={agreement.id} turn={turn} maySettle={maySettle && endedDay === null} />
        ))}
      </ul>
      {form === 'renew' ? <RenewAgreement agreement={agreement} onClose={() => setForm(null)} /> : null}
      {form === 'end' ? <EndAgreement agreement={agreement} onClose={() => setForm(null)} /> : null}
    </li>
  )
}

/** What comes again at a site, with its price and its turns. */
export function SiteAgreements({ siteId, softeners }: { siteId: string; softeners: readonly SiteSoftener[] }) {
  const { api } = useSession()
  const mayChange = usePermission('change:site')
  const maySettle = usePermission('propose:job')
  const [adding, setAdding] = useState(false)
  const query = useQuery(api.agreements.ofSite.queryOptions({ input: { siteId } }))
  return (
    <Section title="Agreements" actions={mayChange ? <Button onClick={() => setAdding(true)}>Add an agreement</Button> : null}>
      {query.error ? <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} /> : null}
      {query.isPending ? <Skeleton lines={3} label="Loading the agreements" /> : null}
      {query.data?.length === 0 ? <p className="text-soft">None yet. Regular visits, salt deliveries and rentals go here.</p> : null}
      {query.data && query.data.length > 0 ? (
        <ul className="border-t border-line">
          {query.data.map((one) => (
            <Card key={one.id} agreement={one} mayChange={mayChange} maySettle={maySettle} />
          ))}
        </ul>
      ) : null}
      {adding ? <AddAgreement siteId={siteId} softeners={softeners} onClose={() => setAdding(false)} /> : null}
    </Section>
  )
}
