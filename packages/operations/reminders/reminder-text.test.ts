import { expect, test } from 'vitest'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { reminderText } from './reminder-text.ts'

const facts = {
  ...{ companyName: 'Larkmoor', telephone: '(555) 012-7746', contactName: 'Hanna Vale', siteLabel: 'Quarry Close 2' },
  ...{ dueEarliest: '2027-02-01', dueLatest: '2027-05-01' },
}

test('a reminder speaks the contact’s language, with months as the company’s region writes them', () => {
  const english = reminderText(facts, '2026-11-29', { locale: 'en-US' })
  expect(english.body).toContain('Dear Hanna Vale,')
  expect(english.body).toContain('between February 2027 and May 2027')
  const spanish = reminderText(facts, '2026-11-29', { locale: 'es-US' })
  expect(englishLeft(`${spanish.subject} ${spanish.body}`)).toEqual([])
  expect(spanish.body).toContain('entre febrero de 2027 y mayo de 2027')
  expect(spanish.body).toContain('(555) 012-7746')
})

test.each([
  ['2026-01-01', '2027-05-01', 'before May 2027'],
  ['2026-01-01', '2026-02-01', 'soon'],
  [null, null, 'soon'],
])('a window from %s to %s is said as “%s”', (dueEarliest, dueLatest, said) => {
  expect(reminderText({ ...facts, dueEarliest, dueLatest }, '2026-11-29', { locale: 'en-US' }).body).toContain(said)
})
