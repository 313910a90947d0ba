import { expect, test, vi } from 'vitest'
import { saidByTablet } from './said-by-tablet.ts'

// Next's own guard, which throws outside a server bundle.
vi.mock('server-only', () => ({}))

const CHICAGO = { locale: 'en-US', timeZone: 'America/Chicago' }
const said = (content: unknown, reader = CHICAGO) =>
  saidByTablet(content, reader).map(({ name, text }) => `${name}: ${text}`.replaceAll(/\s/g, ' '))

const RECORD = {
  ...{ visitId: '01a22bc7-9c70-74aa-a95d-798945d9c501', jobKind: 'rebed', outcome: 'made-safe', workDay: '2026-12-03', notes: '' },
  ...{ startedAt: '2026-12-03T15:10:00.000Z', oldBed: { takenOut: true, endCause: 'worn', evidence: 'soft beads' } },
  newBed: {
    resinKind: 'gel-10',
    volumeFt3: 1.5,
    enteredVolume: { value: 1.5, unit: 'ft3' },
    gravelLb: 18,
    tubeCutIn: null,
    why: { gravel: 'felt it' },
  },
  partsUsed: [{ stockItemId: '01a22bc7-9c70-74aa-a95d-798945d9c502', name: 'Resin', quantity: 1.5, unit: 'ft3' }],
  checks: [
    { stepId: 'bypass-holds', confirmed: false, note: 'holds' },
    { stepId: 'cap-out', confirmed: true },
    { stepId: 'bypass-proven', confirmed: true },
    { stepId: 'left-in-bypass', confirmed: false },
    { stepId: 'of-a-later-app', confirmed: true },
  ],
  measurements: [{ kind: 'rawHardnessGpg', value: 18, enteredValue: 308, enteredUnit: 'mg/L', why: 'a new well' }],
}

test('says a record in the words of its questions and forms, each fact once, and no stored name', () => {
  expect(said({ record: RECORD })).toEqual([
    'Kind of job: Rebed',
    'Outcome: Made safe in bypass, return needed',
    'Day of the work: Dec 3, 2026',
    'Started: Dec 3, 2026, 9:10 AM',
    'The old bed was taken out: yes',
    'Why it ended: Worn out',
    'How you could tell: soft beads',
    'Resin: 10% crosslink',
    'Resin volume: 1.5 ft³',
    'Gravel: 18 lb',
    'gravel: felt it',
    'Part used: Resin: 1.5 ft³',
    'Does the shut-off hold?: It holds',
    'Cap taken out and counted (one in, one out): yes',
    'The bypass, or the main, was proven to hold: yes',
    'Left in bypass, and the house has water: no',
    'of a later app: yes',
    'Raw water hardness: 308 mg/L (a new well)',
  ])
})

test('in Spanish too', () => {
  const lines = said({ record: RECORD }, { locale: 'es-US', timeZone: 'America/Chicago' })
  expect(lines).toContain('Clase de trabajo: Cambio de lecho')
  expect(lines).toContain('Dureza del agua cruda: 308 mg/L (a new well)')
})

test('what a later app or a second device sent is said under the names that it has; a gap by its numbers', () => {
  expect(said({ entries: { 'Raw water hardness': '18 gpg' } })).toEqual(['Raw water hardness: 18 gpg'])
  expect(said({ gasket: { widthIn: 2 }, list: ['a', 'b'] })).toEqual(['width in: 2', 'list, 1: a', 'list, 2: b'])
  expect(said({ from: 3, until: 5 })).toEqual(['Numbers that never came: 3 to 5'])
})

test('takes names that every object has for what they are: names of facts', () => {
  expect(
    said({
      constructor: 'x',
      toString: ['a'],
      checks: [
        { stepId: 'constructor', confirmed: true },
        { stepId: 'bypass-holds.length', confirmed: false },
      ],
    }),
  ).toEqual(['constructor: x', 'to string, 1: a', 'constructor: yes', 'bypass holds.length: no'])
})
