import { beadConditions } from '@almanac/records/bead-condition'
import { cautionKinds } from '@almanac/records/caution-kind'
import { contactRoles } from '@almanac/records/contact-role'
import { endCauses } from '@almanac/records/end-cause'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { languages } from '@almanac/records/language'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import { visitStates } from '@almanac/records/visit-state'
import { amountNames } from '@almanac/units/amount-names'
import { expect, test } from 'vitest'
import { givenTo } from '../../tests/support/message-parts.ts'
import { en } from './en/all.ts'
import { es } from './es/all.ts'

// Messages are written in ICU MessageFormat (Unicode's; https://unicode-org.github.io/icu/userguide/format_parse/messages/), parsed by its reference library.
const CATALOGUES = { en, es } as Record<(typeof languages)[number], Record<string, Record<string, string>>>
const others = languages.filter((one) => one !== 'en')

const messages = (language: (typeof languages)[number]) =>
  Object.entries(CATALOGUES[language]).flatMap(([room, said]) =>
    Object.entries(said).map(([key, text]) => ({ at: `${room}.${key}`, text })),
  )

test.each(others)('%s has every message of English and no other', (language) => {
  expect(messages(language).map((one) => one.at)).toEqual(messages('en').map((one) => one.at))
})

test.each(others)('%s is given what English is given', (language) => {
  const english = new Map(messages('en').map(({ at, text }) => [at, givenTo(text)]))
  for (const { at, text } of messages(language)) expect({ at, given: givenTo(text) }).toEqual({ at, given: english.get(at) })
})

test.each(others)('%s says nothing of three words or more as English does', (language) => {
  const english = new Map(messages('en').map(({ at, text }) => [at, text]))
  const same = messages(language).filter(
    ({ at, text }) => text === english.get(at) && (text.replace(/\{[^}]*\}/g, '').match(/\p{L}{2,}/gu) ?? []).length >= 3,
  )
  expect(same.map((one) => one.at)).toEqual([])
})

test.each(languages)('%s: no message is empty, quotes a brace unknowingly, or shouts', (language) => {
  for (const { at, text } of messages(language)) {
    expect(text.trim(), at).not.toBe('')
    // A straight apostrophe quotes what follows it in ICU's syntax; a typographic one is a letter.
    expect(text, at).not.toContain("'")
    expect(text, at).not.toMatch(/[!¡]/)
  }
})

/** Rooms with a message for each value of an enumeration. */
const ENUMERATIONS: Record<string, readonly string[]> = {
  hazard: cautionKinds,
  amountName: amountNames,
  jobState: [...new Set([...jobStates, ...visitStates])],
  jobKind: jobKinds,
  beadCondition: beadConditions,
  contactRole: contactRoles,
  endCause: endCauses,
  outcome: visitOutcomes,
  outcomeMeaning: visitOutcomes,
  resinKind: recordedResinKinds,
}

test.each(Object.entries(ENUMERATIONS))('%s has words for each value and no other', (room, values) => {
  expect(Object.keys(CATALOGUES.en[room] ?? {}).sort()).toEqual([...values].sort())
})
