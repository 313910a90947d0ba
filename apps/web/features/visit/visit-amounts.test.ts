import type { VisitPage } from '@almanac/contract/visits'
import { measurementsFrom } from '@almanac/service-rules/close-out/record-from-answers'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import type { Ask } from '@almanac/softener/procedure/procedure-types'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { emptyDraft, type ShownDraft } from './draft.ts'
import { recordOf } from './record-of-draft.ts'
import { suggestedParts } from './suggested-parts.ts'
import { isOpen, readOnSite, type VisitReading } from './visit-amounts.ts'

const by: VisitReading = { locale: 'en-US', units: 'us', tank: tankRoom(10, 54, { locale: 'en-US', unitSystem: 'us' }) }
const at = '2026-12-02T15:00:00.000Z'
const ask = {
  id: 'hardness-raw-gpg',
  label: '',
  kind: 'number',
  unit: 'gpg',
  amount: 'hardness',
  choices: [],
  required: true,
} as const satisfies Ask
const typed = (text: string, unit = 'gpg', why?: string) => ({ text, unit, value: null, at, why })

test.each([
  ['', true],
  ['abc', true],
  ['−3', true],
  ['99999', true],
  ['99', true],
  ['1 1/2', false],
  ['18 gpg', false],
])('a required measurement of “%s” keeps its step open: %s', (text, open) => expect(isOpen(ask, typed(text), by)).toBe(open))

test('an unusual measurement lets the step go once its reason is said; what need not be measured may stay empty, but not wrong', () => {
  expect(isOpen(ask, typed('99', 'gpg', 'brackish well'), by)).toBe(false)
  expect(isOpen({ ...ask, required: false }, typed(''), by)).toBe(false)
  expect(isOpen({ ...ask, required: false }, typed('abc'), by)).toBe(true)
})

test('“1 1/2” mg/L is kept as 1.5 mg/L, and as typed', () => {
  const reading = readOnSite('hardness', '1 1/2', 'mg/L', by)
  if (reading.state !== 'read') throw new Error('not read')
  const answers = { 'hardness-raw-gpg': { text: '1 1/2', unit: 'mg/L', value: reading.value, entered: reading.entered.value, at } }
  // 1 gpg is 17.1181 mg/L: 64.79891 mg a grain over 3.785411784 L a gallon.
  expect(measurementsFrom(answers)[0]).toMatchObject({ enteredValue: 1.5, enteredUnit: 'mg/L', value: expect.closeTo(1.5 / 17.1181, 6) })
})

test('“1 1/2” ft³ and “1,300” lb go into the record as they were meant', () => {
  const visit = { visitId: 'v', kind: 'rebed' } as VisitPage
  const shown = {
    ...emptyDraft,
    outcome: 'done',
    takenOut: true,
    resinKind: 'gel-8',
    volume: '1 1/2',
    gravel: '18',
    tube: '52 5/8',
  } as unknown as ShownDraft
  const texts = {
    volumeUnit: 'ft3',
    gravelUnit: 'lb',
    tubeUnit: 'in',
    volumeWhy: '',
    gravelWhy: '',
    tubeWhy: '',
    endCause: 'worn',
    evidence: '',
    workDay: '2026-12-02',
  }
  const part = (quantity: string) => ({ key: quantity, stockItemId: null, name: 'Gravel', unit: 'lb', quantity })
  const record = recordOf(visit, { ...shown, ...texts }, [part('1,300'), part('½'), part(''), part('abc')], by)
  expect(record.newBed).toEqual({
    resinKind: 'gel-8',
    volumeFt3: 1.5,
    enteredVolume: { value: 1.5, unit: 'ft3' },
    gravelLb: 18,
    tubeCutIn: 52.625,
  })
  // A cleared number is asked for: a part that was not used is taken off the list, or zero.
  expect(record.partsUsed.map((one) => one.quantity)).toEqual([1300, 0.5, Number.NaN, Number.NaN])
})

test('what a kit takes stands in the closing form as the company writes numbers', () => {
  const size = { diameterIn: 10, heightIn: 54, nominalGrains: null, sizeAsWritten: null, backwashGpm: null }
  const filling = { resinKind: 'gel-8', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: null, tubeOdIn: null, valveCardId: null }
  const visit = { kind: 'rebed', bed: { bedId: 'b', ...size, ...filling }, stock: [] } as unknown as VisitPage
  const firm = { figures: USUAL_FIGURES, display: { locale: 'de-DE', unitSystem: 'us' }, words: wordsIn('en-US', 'kit') } as const
  // Typical manual: 1.2 fl oz of 5.25% a ft³, so 1.5 × 1.2 × 5.25 ÷ 8.25 = 1.145 of household bleach, measured to a tenth.
  expect(suggestedParts(visit, firm).find((part) => part.unit === 'fl oz')?.quantity).toBe('1,1')
})
