import { jobStates } from '@almanac/records/job-state'
import { describe, expect, test } from 'vitest'
import type { ReminderContact } from './choose-contact.ts'
import { reminderFor } from './eligibility.ts'

const contact = (contactId: string, change: Partial<ReminderContact> = {}): ReminderContact => ({
  contactId,
  role: 'payer',
  name: 'Ada Byrd',
  phone: '555-010-4477',
  email: 'ada@example.com',
  letterAddress: true,
  consents: [{ channel: 'email', granted: true }],
  ...change,
})
const bed = { bedId: 'b1', inService: true, dueWindow: { earlyDay: '2026-08-01', lateDay: '2027-02-01' } }
const settings = { leadDays: 60, channels: ['email', 'phone'] as const }
const decide = (change: {
  bed?: Partial<typeof bed> | { dueWindow: null }
  state?: (typeof jobStates)[number]
  contacts?: ReminderContact[]
  today?: string
  leadDays?: number
  channels?: ('email' | 'phone' | 'text' | 'letter')[]
}) =>
  reminderFor(
    { ...bed, ...change.bed },
    change.state ? { state: change.state } : null,
    change.contacts ?? [contact('c1')],
    { leadDays: change.leadDays ?? settings.leadDays, channels: change.channels ?? [...settings.channels] },
    change.today ?? '2026-06-10',
    { locale: 'en-US' },
  )

// 60 days before 1 August 2026 is 2 June 2026.
test.each([
  ['2026-06-01', false],
  ['2026-06-02', true],
  ['2026-08-01', true],
  ['2029-01-01', true],
])('on %s it is due: %s', (today, due) => expect(decide({ today }).due).toBe(due))

test('says when it will be due', () =>
  expect(decide({ today: '2026-06-01' })).toEqual({ due: false, reason: 'Not yet: the reminder is due from Jun 2, 2026.' }))

test('the key stays while the window moves', () => {
  const keys = ['2026-07-01', '2026-07-02', '2026-08-15'].map((earlyDay) => {
    const decision = decide({ bed: { dueWindow: { earlyDay, lateDay: '2027-02-01' } }, today: '2026-07-01' })
    return decision.due && decision.key
  })
  expect(new Set(keys)).toEqual(new Set(['b1:due-window']))
})

describe('nothing is due', () => {
  test.each(jobStates)('or is, while a job is %s', (state) =>
    expect(decide({ state }).due).toBe(state === 'closed' || state === 'called-off'),
  )
  test('for a bed that has ended', () => expect(decide({ bed: { inService: false } })).toMatchObject({ due: false }))
  test('without a forecast', () =>
    expect(decide({ bed: { dueWindow: null } })).toMatchObject({ due: false, reason: expect.stringMatching(/couldn’t forecast this bed/) }))
  test.each([
    ['nobody', [], /Add a contact/],
    ['only a key-holder', [contact('c1', { role: 'key-holder' })], /Add a contact/],
    ['nobody who consents', [contact('c1', { consents: [] })], /Nobody agreed to email or phone/],
    ['a refusal', [contact('c1', { consents: [{ channel: 'email', granted: false }] })], /Nobody agreed/],
    ['consent without an address', [contact('c1', { email: null })], /no email address is recorded/],
    ['consent on a channel the firm does not use', [contact('c1', { consents: [{ channel: 'letter', granted: true }] })], /Nobody agreed/],
  ])('to %s', (_, contacts, reason) => expect(decide({ contacts })).toEqual({ due: false, reason: expect.stringMatching(reason) }))
  test('without a channel', () =>
    expect(decide({ channels: [] })).toMatchObject({ due: false, reason: expect.stringMatching(/Choose at least one/) }))
})

describe('who and how', () => {
  const chosen = (contacts: ReminderContact[], channels?: ('email' | 'phone' | 'text' | 'letter')[]) => {
    const decision = decide({ contacts, channels })
    return decision.due ? `${decision.contactId} ${decision.channel}` : decision.reason
  }
  const both = [
    { channel: 'email' as const, granted: true },
    { channel: 'phone' as const, granted: true },
  ]
  test('the payer before landlord and occupier, whatever the order given', () => {
    const three = [contact('o', { role: 'occupier' }), contact('l', { role: 'landlord' }), contact('p')]
    expect([chosen(three), chosen([...three].reverse())]).toEqual(['p email', 'p email'])
  })
  test('another when the payer does not consent', () =>
    expect(chosen([contact('p', { consents: [] }), contact('o', { role: 'occupier' })])).toBe('o email'))
  test('the firm’s first channel that is open', () => {
    expect(chosen([contact('p', { consents: both })], ['phone', 'email'])).toBe('p phone')
    expect(chosen([contact('p', { consents: both, phone: null })], ['phone', 'email'])).toBe('p email')
  })
  test('two payers: always the same one', () => {
    const two = [contact('p2'), contact('p1')]
    expect([chosen(two), chosen([...two].reverse())]).toEqual(['p1 email', 'p1 email'])
  })
  test('a refusal beside a yes is a refusal', () => {
    expect(chosen([contact('p', { consents: [...both, { channel: 'email', granted: false }] })])).toBe('p phone')
  })
})
