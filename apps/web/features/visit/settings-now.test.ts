import type { SoftenerSettings } from '@almanac/contract/softeners'
import type { VisitPage } from '@almanac/contract/visits'
import { expect, test } from 'vitest'
import { settingsRecord } from '../../../../tests/support/settings-record.ts'
import { asFound } from './as-found.ts'
import { type Draft, emptyDraft } from './draft.ts'
import { settingsNow } from './settings-now.ts'

const TODAY = '2026-12-03'
const at = '2026-12-03T18:00:00.000Z'
const answer = (value: number, unit: string) => ({ text: String(value), unit, value, at })

const settings = settingsRecord()
const [tank] = settings.tanks as [SoftenerSettings['tanks'][number]]
const bed = {
  ...{ bedId: tank.bed?.id, resinKind: 'gel-8', volumeFt3: 1.5, gravelLb: 18, tubeCutIn: 52.125, diameterIn: 10, heightIn: 54 },
  ...{ nominalGrains: null, sizeAsWritten: null, tubeOdIn: 1.05, valveCardId: null, backwashGpm: 2.4 },
}
const visit = (more: Partial<VisitPage> = {}) => ({ kind: 'inspection', twin: null, bed, settings, ...more }) as unknown as VisitPage
const now = (given: VisitPage, draft: Partial<Draft> = {}) => settingsNow(given, { ...emptyDraft, ...draft }, TODAY)

test('what was not measured stands as on record', () => expect(now(visit())).toEqual(settings))

test('raw water that was measured outranks the test before', () => {
  const water = { ...settings.water, hardnessGpg: { value: 24, from: 'test', day: TODAY } }
  expect(now(visit(), { answers: { 'hardness-raw-gpg': answer(24, 'gpg') } })).toEqual({ ...settings, water })
})

test('after a rebed the bed is today’s, of what was poured', () => {
  const poured = { 'resin-ft3': answer(1.25, 'ft3'), 'gravel-lb': answer(12, 'lb'), 'new-tube-length-in': answer(51.5, 'in') }
  const filled = now(visit({ kind: 'rebed' }), { answers: poured, resinKind: 'gel-10' })?.tanks[0]?.bed
  expect(filled).toMatchObject({ volumeFt3: 1.25, gravelLb: 12, tubeCutIn: 51.5, resinKind: 'gel-10' })
  expect(filled).toMatchObject({ beganEarliest: TODAY, beganLatest: TODAY })
  // Before anything is poured the kit brings as much as came out.
  expect(now(visit({ kind: 'rebed' }))?.tanks[0]?.bed).toMatchObject({ volumeFt3: 1.5, beganLatest: TODAY })
})

test('a tank found to be another one is set by its own size, and nothing on record of the other’s filling', () => {
  const found = asFound(visit(), { 'found-diameter-in': answer(12, 'in') })
  expect(now(found)?.tanks).toMatchObject([{ diameterIn: 12, heightIn: 54, bed: { volumeFt3: null, gravelLb: null } }])
})

test('of a twin the tank at hand is set, the other one’s bed is not taken for it', () => {
  const other = {
    ...tank,
    id: '019b0000-0000-7000-8000-00000000000e',
    position: 2,
    bed: tank.bed && { ...tank.bed, id: 'other', volumeFt3: 3 },
  }
  const twin = { position: 1, of: 2, arrangement: 'twin-alternating' } as const
  const both = { ...settings, arrangement: 'twin-alternating' as const, tanks: [other, tank] }
  expect(now(visit({ twin, settings: both }))?.tanks).toMatchObject([{ position: 1, bed: { volumeFt3: 1.5 } }])
  // Its own bed came out on an earlier visit: by its place.
  const emptied = { ...both, tanks: [other, { ...tank, bed: null }] }
  expect(now(visit({ twin, kind: 'rebed', settings: emptied }))?.tanks).toMatchObject([
    { position: 1, bed: { volumeFt3: 1.5, beganLatest: TODAY } },
  ])
})

test('a page that a tablet kept from the release before has none', () => {
  const { settings: _, ...kept } = visit()
  expect(now(kept as VisitPage)).toBeNull()
  expect(now(visit({ settings: null }))).toBeNull()
})
