import { channels } from '@almanac/records/channel'
import { describe, expect, test } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { namesFor } from './reminder-names.ts'
import { type ReminderFacts, reminderText } from './reminder-text.ts'
import { standardText } from './standard-text.ts'

const TODAY = '2026-11-29'
const facts: ReminderFacts = {
  ...{ companyName: 'Larkmoor', telephone: '(555) 012-7746', contactName: 'Hanna Vale', siteLabel: 'Quarry Close 2' },
  ...{ dueEarliest: '2027-02-01', reason: { key: 'chloramine', sinceYear: 2021 }, life: { lived: 11, likely: 12 } },
  ...{ volumeFt3: 1.5, tank: { diameterIn: 10, heightIn: 54 }, notice: 1 },
}
type Channel = (typeof channels)[number]
const standing = { subject: 'S', body: '' }

function fill(
  text: { subject: string; body: string },
  more: Partial<ReminderFacts>,
  channel: Channel,
  locale: string,
  unitSystem: 'us' | 'metric',
) {
  const filled = reminderText(text, { ...facts, ...more }, channel, TODAY, { locale, unitSystem })
  if (!filled.ok) throw new Error(filled.reason)
  return filled
}
const standard = (more: Partial<ReminderFacts> = {}, channel: Channel = 'email', locale = 'en-US') =>
  fill(standardText(channel, locale), more, channel, locale, 'us')

test('a reminder says why in plain words, and the early end of its window', () => {
  expect(standard().body).toBe(
    [
      'Dear Hanna Vale,',
      'The resin in your water softener at Quarry Close 2 is getting old. Worn-out resin lets hard water through and can break up.',
      'Your town’s water changed to chloramine in 2021. It wears resin faster. Your resin has lived about 11 of its likely 12 years. We suggest new resin before February 2027.',
      'This is a forecast from its age and your water, not a measurement. If something has changed, or others worked on the softener, please tell us.',
      'Answer here: [answer link]',
      'Please call (555) 012-7746 to choose a day. If you would rather not hear about this, tell us and we’ll stop.',
      'Larkmoor',
    ].join('\n\n'),
  )
})

test.each([
  ['2026-01-01', 'It may give out at any time.'],
  [null, 'It may give out at any time.'],
  ['2026-12-01', 'before December 2026'],
])('a window that begins %s is said as “%s”', (dueEarliest, said) => expect(standard({ dueEarliest }).body).toContain(said))

test.each([
  [{ reason: { key: 'iron', sinceYear: null } as const }, 'carries iron'],
  [{ reason: { key: 'free-chlorine', sinceYear: 2020 } as const }, 'carries chlorine'],
  [{ life: { lived: 14, likely: null } }, 'about 14 years old'],
  [{ life: { lived: 1, likely: null } }, 'about 1 year old'],
  [{ contactName: null }, 'Hello,'],
  [{ telephone: null }, 'Please call us to choose'],
  [{ notice: 2 }, 'We wrote to you about this before.'],
])('%j is said as “%s”', (more, said) => expect(standard(more).body).toContain(said))

describe.each(channels)('by %s', (channel) => {
  test('the standard text speaks the contact’s language alone, with months as the company’s region writes them', () => {
    const spanish = standard({ notice: 2 }, channel, 'es-US')
    expect(englishLeft(`${spanish.subject} ${spanish.body}`)).toEqual([])
    expect(spanish.body).toContain('febrero de 2027')
    expect(spanish.body).not.toMatch(/[{}%]/)
  })

  // Braces, tags and lines that a template or a mail's head could take for its own.
  const hostile = `{name} {{ phone }}{% if x %} <b>&amp; ${'Maximiliana-'.repeat(20)}\r\nBcc: x@y.example`
  test.each(['en-US', 'en-GB', 'es-US'])('in %s a long, hostile name and place come through as they are', (locale) => {
    const { subject, body } = standard({ contactName: hostile, siteLabel: hostile }, channel, locale)
    expect(`${subject}\n${body}`).toContain(hostile)
  })

  test('each name that it may hold is filled in, known or not, in both languages and unit systems', () => {
    const every = namesFor(channel)
      .map((name) => `${name}=<{{ ${name} }}>`)
      .join('\n')
    for (const locale of ['en-US', 'es-US'])
      for (const system of ['us', 'metric'] as const) {
        const { body } = fill({ ...standing, body: every }, {}, channel, locale, system)
        expect(body).not.toMatch(/=<>|undefined|NaN|\{\{/)
        // 1.5 ft³ are 42.5 L (28.3168 L/ft³), 10 × 54 in are 25 × 137 cm (2.54 cm/in, exact).
        expect(body).toMatch(system === 'us' ? /resin_volume=<1½\sft³>/ : /resin_volume=<42(\.5)?\sL>/)
        expect(body).toMatch(system === 'us' ? /tank_size=<10 × 54\sin>/ : /tank_size=<25 × 137\scm>/)
        const nothing = { contactName: null, telephone: null, reason: null, life: null, dueEarliest: null, volumeFt3: null, tank: null }
        expect(fill({ ...standing, body: every }, nothing, channel, locale, system).body).not.toMatch(/undefined|null|NaN|\{\{/)
      }
  })
})

test('a text is short, and whoever calls is not handed a letter', () => {
  expect(standard({}, 'text').body).toBe(
    'Larkmoor: the resin in your softener at Quarry Close 2 will likely need replacing before February 2027. Call (555) 012-7746. Answer: [answer link]',
  )
  const call = standard({}, 'phone')
  expect(call.subject).toBe('Call Hanna Vale about the softener at Quarry Close 2')
  expect(call.body).not.toMatch(/Dear|this message|call \(555\)/i)
})
