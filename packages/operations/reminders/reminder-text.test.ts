import { channels } from '@almanac/records/channel'
import { describe, expect, test } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { type ReminderFacts, reminderText } from './reminder-text.ts'

const TODAY = '2026-11-29'
const facts: ReminderFacts = {
  ...{ companyName: 'Larkmoor', telephone: '(555) 012-7746', contactName: 'Hanna Vale', siteLabel: 'Quarry Close 2' },
  ...{ dueEarliest: '2027-02-01', reason: { key: 'chloramine', sinceYear: 2021 }, life: { lived: 11, likely: 12 } },
}
const english = (more: Partial<ReminderFacts> = {}, channel: (typeof channels)[number] = 'email') =>
  reminderText({ ...facts, ...more }, channel, TODAY, { locale: 'en-US' })

test('a reminder says why in plain words, and the early end of its window', () => {
  const { body } = english()
  expect(body).toContain('Dear Hanna Vale,')
  expect(body).toContain('Your town’s water changed to chloramine in 2021.')
  expect(body).toContain('Your resin has lived about 11 of its likely 12 years.')
  expect(body).toContain('before February 2027')
  expect(body).toContain('(555) 012-7746')
})

test.each([
  ['2026-01-01', 'It may give out at any time.'],
  [null, 'It may give out at any time.'],
  ['2026-12-01', 'before December 2026'],
])('a window that begins %s is said as “%s”', (dueEarliest, said) => expect(english({ dueEarliest }).body).toContain(said))

test.each([
  [{ reason: { key: 'iron', sinceYear: null } as const }, 'carries iron'],
  [{ reason: { key: 'free-chlorine', sinceYear: 2020 } as const }, 'carries chlorine'],
  [{ life: { lived: 14, likely: null } }, 'about 14 years old'],
  [{ life: { lived: 1, likely: null } }, 'about 1 year old'],
])('%j is said as “%s”', (more, said) => expect(english(more).body).toContain(said))

describe.each(channels)('by %s', (channel) => {
  test('it speaks the contact’s language alone, with months as the company’s region writes them', () => {
    const spanish = reminderText(facts, channel, TODAY, { locale: 'es-US' })
    expect(englishLeft(`${spanish.subject} ${spanish.body}`)).toEqual([])
    expect(spanish.body).toContain('febrero de 2027')
  })

  // Braces, tags and lines that a template or a mail's head could take for its own.
  const hostile = `{name} <b>&amp; ${'Maximiliana-'.repeat(20)}\r\nBcc: x@y.example`
  test.each(['en-US', 'en-GB', 'es-US'])('in %s a long, hostile name and place come through as they are', (locale) => {
    const { subject, body } = reminderText({ ...facts, contactName: hostile, siteLabel: hostile }, channel, TODAY, { locale })
    expect(`${subject}\n${body}`).toContain(hostile)
  })
})

test('a text is short, and whoever calls is not handed a letter', () => {
  expect(english({}, 'text').body).toBe(
    'Larkmoor: the resin in your softener at Quarry Close 2 will likely need replacing before February 2027. Call (555) 012-7746. Answer: [answer link]',
  )
  const call = english({}, 'phone')
  expect(call.subject).toBe('Call Hanna Vale about the softener at Quarry Close 2')
  expect(call.body).not.toMatch(/Dear|this message|call \(555\)/i)
})
