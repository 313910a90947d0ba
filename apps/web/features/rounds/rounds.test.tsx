import type { Rounds, RoundTurn } from '@almanac/contract/agreements'
import type { Me } from '@almanac/contract/session'
import { messagesOf } from '@almanac/words/messages-of'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { Providers } from '@/client/providers'
import { Ending } from './ending.tsx'
import { LateTurns } from './late-turns.tsx'
import { MonthTurns } from './month-turns.tsx'

const company = {
  ...{ id: 'c', name: 'Larkmoor', unitSystem: 'us', currency: 'USD', locale: 'en-US', timeZone: 'America/Chicago' },
}
const me = {
  person: { id: 'p', name: 'Ruth', email: 'ruth@larkmoor.example', language: 'en', secondStep: false },
  ...{ company, role: 'owner', permissions: ['change:site', 'propose:job'], companies: [], today: '2026-12-02', figures: [] },
} as unknown as Me

const shown = (part: ReactNode) =>
  renderToStaticMarkup(
    <Providers me={me} messages={messagesOf('office', 'en-US')}>
      {part}
    </Providers>,
  )
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')

const place = { siteId: 's', siteLabel: 'Orchard Lane 14', town: 'Larkmoor', customerName: 'Hanna Vale' }
const turn = (more: Partial<RoundTurn>): RoundTurn => ({
  ...place,
  ...{ agreementId: 'a', kind: 'visits', every: { count: 1, unit: 'year' }, softenerLabel: null, dueDay: '2026-12-15', version: 0 },
  ...{ standing: 'open', job: null, hours: 0.75, fits: true, ...more },
})
const rounds = (due: RoundTurn[]): Rounds => ({
  months: [
    { month: '2026-12', turns: due.length, done: 0, hours: 1.6, freeHours: 40.2 },
    { month: '2027-01', turns: 3, done: 0, hours: 2, freeHours: 80 },
  ],
  ...{ month: '2026-12', due, late: [], ending: [] },
})

describe('the rounds of a month', () => {
  test('say what is due, how full the crews are, and that a person makes it jobs', () => {
    const page = shown(
      <MonthTurns
        rounds={rounds([
          turn({}),
          turn({ agreementId: 'b', siteLabel: 'Mill bakery', kind: 'salt', every: { count: 6, unit: 'week' }, fits: false }),
          turn({ agreementId: 'c', siteLabel: 'Weir Road 8', standing: 'done' }),
        ])}
        onMonth={() => {}}
      />,
    )
    expect(page).toContain('Due in December 2026')
    expect(page).toContain('January 2027: 3')
    expect(page).toContain('About 2 hours of work; the crews have about 40 left after rebeds.')
    expect(page).toMatch(/Orchard Lane 14 .* Regular visits every year .* to approve/)
    expect(page).toMatch(/Mill bakery .* Salt deliveries every 6 weeks .* crews are full/)
    expect(page).toContain('Add 2 jobs for December 2026')
  })

  test('without any say so, and offer no jobs', () => {
    expect(shown(<MonthTurns rounds={rounds([])} onMonth={() => {}} />)).toMatch(/Nothing due this month\. .* Add 0 jobs/)
  })
})

test('what was not done can be made a job or settled; what has a job leads to it', () => {
  const page = shown(
    <LateTurns
      turns={[
        turn({ dueDay: '2026-10-03' }),
        turn({ agreementId: 'b', standing: 'under-way', job: { id: 'j', kind: 'annual-visit', state: 'booked' } }),
      ]}
      thisMonth="2026-12"
    />,
  )
  expect(page.match(/Done or skip/g)).toHaveLength(1)
  expect(page).toContain('Oct 3, 2026')
  expect(page).toMatch(/booked/i)
  expect(page).toContain('Add 1 job for December 2026')
  expect(shown(<LateTurns turns={[]} thisMonth="2026-12" />)).toContain('Nothing is late.')
})

test('agreements that end say when, and what they cost; one of a house that was sold cannot be renewed for whoever left', () => {
  const line = { ...place, version: 1, kind: 'rental', every: { count: 6, unit: 'month' }, softenerLabel: null } as const
  const rows: Rounds['ending'] = [
    {
      ...{ ...line, id: 'a', price: { minor: 18_500, per: 'year' }, untilDay: '2099-01-31', lastDay: '2099-01-31' },
      ...{ endedDay: null, endWhy: null },
    },
    {
      ...{ ...line, id: 'b', price: null, untilDay: null, lastDay: '2026-11-01', endedDay: '2026-11-01', endWhy: 'sold' },
    },
  ]
  const page = shown(<Ending rows={rows} />)
  expect(page).toMatch(/ends Jan 31, 2099 .*\$185(\.00)? a year/)
  expect(page).toMatch(/ended Nov 1, 2026 .*the site changed hands/)
  expect(page.match(/Renew/g)).toHaveLength(1)
})
