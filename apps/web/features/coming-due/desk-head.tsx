'use client'
import type { Desk } from '@almanac/contract/desk'
import type { DueMonths } from '@almanac/contract/due'
import { useDisplay } from '@almanac/ui/display'
import { SHORT_FROM_HOURS } from '@almanac/ui/hours-plot'
import { TextLink } from '@almanac/ui/text-link'
import { formatDay, formatLongMonth } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { usePermission, useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import { CrewWhy } from './crew-why.tsx'
import { DeskSum } from './desk-sum.tsx'

type Props = { desk: Desk; picture: DueMonths; onMonth: (month: string) => void }

/** What the page says before any list: whom to call, what to order by when, which month lacks crew hours, and the work ahead as one sum. */
export function DeskHead({ desk, picture, onMonth }: Props) {
  const display = useDisplay()
  const mayJudge = usePermission('judge:forecast')
  // Before the first forecast nobody is to be called because nobody knows: no figure then.
  if (!desk.asOfDay) return <DeskSum desk={desk} picture={picture} />
  return (
    <div className="mb-6 grid grid-cols-1 gap-x-8 gap-y-6 sm:grid-cols-2 lg:grid-cols-[1fr_1fr_1fr_1.4fr]">
      <CallFigure desk={desk} />
      <OrderFigure />
      <CrewFigure desk={desk} onMonth={onMonth} />
      <div>
        <DeskSum desk={desk} picture={picture} />
        {desk.past && mayJudge ? (
          <p className="mt-2 text-small text-soft">
            {pastWords(desk.past)}{' '}
            <TextLink href="/track-record" link={Link}>
              How good were we?
            </TextLink>
          </p>
        ) : null}
        {picture.widenedBy > 1 ? (
          <p className="text-small text-soft">Past years fell outside too often, so the likely range is wider now.</p>
        ) : null}
        {desk.beds > 0 ? <p className="sr-only">{showWhole(desk.beds, display)} beds in service.</p> : null}
      </div>
    </div>
  )
}

function pastWords({ years, tooMany, tooFew }: NonNullable<Desk['past']>): string {
  const of = `of ${years} past years`
  if (tooMany === 0 && tooFew === 0) return `Our counts held in all ${of.slice(3)}.`
  const ran = [tooMany > 0 ? `too high in ${tooMany}` : '', tooFew > 0 ? `too low in ${tooFew}` : ''].filter(Boolean).join(', ')
  return `Our counts were ${ran} ${of}.`
}

/** One figure with its head and what follows from it; a line leads down from it. */
function Figure({
  head,
  figure,
  rest,
  danger,
  children,
}: {
  head: string
  figure: string
  rest?: string
  danger?: boolean
  children: ReactNode
}) {
  return (
    <section className={`border-l pl-4 ${danger ? 'border-danger' : 'border-edge'}`}>
      <h2 className={`font-semibold ${danger ? 'text-danger' : ''}`}>{head}</h2>
      <p className={danger ? 'text-danger' : ''}>
        <span className="text-[2.25rem]/tight font-semibold">{figure}</span>{' '}
        {rest ? <span className="text-lead font-semibold">{rest}</span> : null}
      </p>
      <div className="text-small text-soft">{children}</div>
    </section>
  )
}

/** Calls that would tell most about next year, beside those about beds that have more likely failed than not. */
function TellingCalls({ telling }: Pick<Desk, 'telling'>) {
  const display = useDisplay()
  if (!telling) return null
  return (
    <p className="mt-2">
      <TextLink href="/coming-due?sort=telling#beds" link={Link}>
        {telling.calls === 1 ? 'One call' : `${telling.calls} calls`} would tell most
      </TextLink>{' '}
      about next year: its range would be about {showWhole(telling.narrower, display)} rebeds narrower.
    </p>
  )
}

function CallFigure({ desk: { toCall, answered, telling } }: { desk: Desk }) {
  const display = useDisplay()
  const left = toCall - answered
  if (toCall === 0)
    return (
      <Figure head="Call" figure="Nobody">
        No bed has more likely failed than not.
        <TellingCalls telling={telling} />
      </Figure>
    )
  return (
    <Figure head="Call about" figure={showWhole(left, display)} rest={left === 1 ? 'bed' : 'beds'}>
      <p>
        More likely than not, their water is hard.
        {answered > 0 ? ` ${showWhole(answered, display)} more answered or tried today.` : ''}
      </p>
      <TextLink href="#beds" link={Link}>
        Start with the first
      </TextLink>
      <TellingCalls telling={telling} />
    </Figure>
  )
}

function OrderFigure() {
  const display = useDisplay()
  const today = useToday()
  const { api } = useSession()
  const orders = useQuery(api.stores.orders.queryOptions())
  if (!orders.data)
    return (
      <Figure head="Order by" figure="…">
        {null}
      </Figure>
    )
  // Of empty stores nobody knows what runs short: that is no "nothing".
  if (orders.data.lines.length === 0)
    return (
      <Figure head="Order by" figure="?">
        <p>The stores have no items yet, so what runs short isn’t known.</p>
        <TextLink href="/stores" link={Link}>
          Say what you keep
        </TextLink>
      </Figure>
    )
  const needed = orders.data.lines.filter((line) => line.orderBy !== null)
  const [first] = needed
  if (!first?.orderBy)
    return (
      <Figure head="Order" figure="Nothing">
        No shortages before {formatDay(orders.data.untilDay, display)}.
      </Figure>
    )
  const late = first.orderBy <= today
  const same = needed.filter((line) => line.orderBy !== null && line.orderBy <= (late ? today : (first.orderBy ?? today)))
  return (
    <Figure head="Order by" figure={late ? 'today' : formatDay(first.orderBy, display)} danger={late}>
      <p>{same.length === 1 ? `${first.name} runs short.` : `${showWhole(same.length, display)} things run short: ${first.name} first.`}</p>
      <TextLink href="/stores" link={Link}>
        What to order
      </TextLink>
    </Figure>
  )
}

function CrewFigure({ desk, onMonth }: Pick<Props, 'desk' | 'onMonth'>) {
  const display = useDisplay()
  const shortOf = (month: Desk['months'][number]) => month.hours.mean - month.crewHours
  const short = desk.months.filter((month) => shortOf(month) >= SHORT_FROM_HOURS)
  const [first, ...others] = short
  if (!first)
    return (
      <Figure head="Crews" figure="Enough" rest="hours">
        <p>In each of the next 12 months.</p>
        <CrewWhy desk={desk} />
      </Figure>
    )
  const away = first.away[0]
  const worst = others.reduce<(typeof others)[number] | null>(
    (most, one) => (most === null || shortOf(one) > shortOf(most) ? one : most),
    null,
  )
  return (
    <Figure
      head="Crews short by"
      figure={`${showWhole(shortOf(first), display)} h`}
      rest={`in ${formatLongMonth(first.month, display)}`}
      danger
    >
      <p>
        {away ? `${away.name} is away ${away.untilDay ? `until ${formatDay(away.untilDay, display)}` : 'until further notice'}. ` : ''}
        {worst
          ? `${others.length === 1 ? 'One more month is' : `${others.length} more months are`} short, most in ${formatLongMonth(worst.month, display)}: ${showWhole(shortOf(worst), display)} h.`
          : ''}
      </p>
      <button
        type="button"
        className="min-h-6 underline decoration-edge underline-offset-4 hover:decoration-ink"
        onClick={() => onMonth(first.month)}
      >
        See {formatLongMonth(first.month, display)}
      </button>{' '}
      <CrewWhy desk={desk} />
    </Figure>
  )
}
