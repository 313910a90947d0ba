import { visitOutcomes } from '@almanac/records/visit-outcome'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, test } from 'vitest'
import type { CloseOutRecord } from './close-out-form.ts'
import { type CloseOutContext, missingForCloseOut } from './completeness.ts'

const usual: CloseOutContext = {
  outletLimitGpg: 1,
  display: { locale: 'en-US', unitSystem: 'us' },
  words: wordsIn('en-US', 'lacking'),
  outcomes: wordsIn('en-US', 'outcome'),
  stops: wordsIn('en-US', 'stop'),
  amounts: wordsIn('en-US', 'amount'),
  amountNames: wordsIn('en-US', 'amountName'),
}
const ticked = (...stepIds: string[]) => stepIds.map((stepId) => ({ stepId, confirmed: true }))
const outlet = (value: number) => [{ kind: 'outletHardnessGpg' as const, value, enteredValue: value, enteredUnit: 'gpg' }]

const rebed: CloseOutRecord = {
  visitId: 'v',
  jobKind: 'rebed',
  outcome: 'done',
  workDay: '2026-05-04',
  startedAt: '2026-05-04T08:00:00.000Z',
  finishedAt: '2026-05-04T10:30:00.000Z',
  checks: ticked('bypass-proven', 'pressure-zero', 'cap-out-counted', 'outlet-tested', 'leaks-checked', 'bypass-returned'),
  measurements: outlet(0.5),
  partsUsed: [{ stockItemId: 'r', name: 'Resin 8%, 1 ft³', quantity: 1.5, unit: 'bag' }],
  oldBed: { takenOut: true, endCause: 'worn', evidence: 'soft beads' },
  newBed: { resinKind: 'gel-10', volumeFt3: 1.5, enteredVolume: { value: 1.5, unit: 'ft3' }, gravelLb: 18, tubeCutIn: 53.5 },
  reason: '',
  hardnessReason: '',
  notes: '',
}
const visit: CloseOutRecord = {
  ...rebed,
  jobKind: 'annual-visit',
  checks: ticked('leaks-checked', 'bypass-returned'),
  measurements: [],
  partsUsed: [],
  oldBed: null,
  newBed: null,
}
const missing = (change: Partial<CloseOutRecord>, from = rebed) => missingForCloseOut({ ...from, ...change }, usual)

test('a full rebed and a full annual visit lack nothing', () => {
  expect(missing({})).toEqual([])
  expect(missing({}, visit)).toEqual([])
})

test('a rebed into a tank that an earlier visit emptied has no old bed to end', () => {
  const empty = { ...usual, emptied: true }
  expect(missingForCloseOut({ ...rebed, oldBed: null }, empty)).toEqual([])
  expect(missingForCloseOut({ ...rebed, oldBed: null, newBed: null }, empty)).toEqual([expect.stringMatching(/new bed/)])
  const condemned = { ...rebed, outcome: 'condemned' as const, oldBed: null, newBed: null, reason: 'a crack below the neck' }
  const checks = ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told')
  expect(missingForCloseOut({ ...condemned, checks }, empty)).toEqual([])
  expect(missingForCloseOut({ ...condemned, checks }, usual)).not.toEqual([])
})

describe('a rebed that is done', () => {
  test.each(rebed.checks.map((check) => check.stepId))('does not close without %s', (stepId) => {
    const without = rebed.checks.filter((check) => check.stepId !== stepId)
    expect(missing({ checks: without })).toHaveLength(1)
    expect(missing({ checks: [...without, { stepId, confirmed: false }] })).toHaveLength(1)
  })

  test.each([
    [{ oldBed: null }, ['Check that the old bed was taken out.', 'Choose why the old bed ended; “not known” is an answer too.']],
    [{ oldBed: { takenOut: true, endCause: null, evidence: '' } }, ['Choose why the old bed ended; “not known” is an answer too.']],
    [{ oldBed: { takenOut: true, endCause: 'worn', evidence: ' ' } }, [expect.stringMatching(/how you could tell/)]],
    [{ oldBed: { takenOut: true, endCause: 'unknown', evidence: '' } }, []],
    [{ newBed: null }, ['Enter the new bed: resin, volume, gravel, tube length.']],
    [{ newBed: { ...rebed.newBed, volumeFt3: 0 } }, ['Enter the volume of the new resin, more than zero.']],
    [{ newBed: { ...rebed.newBed, volumeFt3: Number.NaN } }, ['Enter the volume of the new resin, more than zero.']],
    [{ newBed: { ...rebed.newBed, gravelLb: 0 } }, []],
    [{ newBed: { ...rebed.newBed, gravelLb: -1 } }, [expect.stringMatching(/gravel/)]],
    [{ newBed: { ...rebed.newBed, tubeCutIn: null } }, ['Enter the length the distributor tube was cut to.']],
    [{ partsUsed: [] }, ['List the parts used, the resin at least.']],
    [{ partsUsed: [{ ...rebed.partsUsed[0], quantity: 0 }] }, [expect.stringMatching(/more than zero/)]],
    [{ startedAt: null }, ['Enter the time the visit started.']],
    [{ finishedAt: '2026-05-04T07:00:00.000Z' }, [expect.stringMatching(/finishes before it starts/)]],
  ] as [Partial<CloseOutRecord>, unknown[]][])('%j', (change, sentences) => expect(missing(change)).toEqual(sentences))
})

describe('the day of the work', () => {
  const judged = (workDay: string) => missingForCloseOut({ ...rebed, workDay }, { ...usual, today: '2026-05-05', notBefore: '2026-05-02' })
  test.each(['2026-05-02', '2026-05-04', '2026-05-05'])('%s may be', (day) => expect(judged(day)).toEqual([]))
  test('has come, and is not before the visit could have been', () => {
    expect(judged('2026-05-06')).toEqual(['The work can’t have been done on May 6, 2026: that day hasn’t come. Correct the day.'])
    expect(judged('2026-05-01')).toEqual([
      'The work can’t have been done on May 1, 2026: the job was first recorded on May 2, 2026. Correct the day.',
    ])
  })
  test.each(['', '2026-02-30'])('%j is asked for', (day) => expect(judged(day)).toEqual(['Enter the day of the work.']))
})

// Below 1 gpg at the valve outlet shows little bypassing. Common practice, no source.
describe('hardness at the valve outlet', () => {
  test.each([0, 0.5, 0.99])('%f gpg passes', (value) => expect(missing({ measurements: outlet(value) })).toEqual([]))
  test.each([1, 3, 18])('%f gpg needs a reason', (value) => {
    expect(missing({ measurements: outlet(value) })).toEqual([expect.stringContaining(`${value} gpg`)])
    expect(missing({ measurements: outlet(value), hardnessReason: 'iron-in-sample' })).toEqual([])
    for (const hardnessReason of ['customer in a hurry', 'kit-failed'])
      expect(missing({ measurements: outlet(value), hardnessReason })).toHaveLength(1)
  })
  test('the last measurement counts', () => expect(missing({ measurements: [...outlet(5), ...outlet(0.5)] })).toEqual([]))
  test('not measured needs a reason', () => {
    expect(missing({ measurements: [] })).toHaveLength(1)
    expect(missing({ measurements: [], hardnessReason: 'kit-failed' })).toEqual([])
  })
  test('the limit is the firm’s', () =>
    expect(missingForCloseOut({ ...rebed, measurements: outlet(1.5) }, { ...usual, outletLimitGpg: 2 })).toEqual([]))
  test('a number that is none is refused', () => expect(missing({ measurements: outlet(Number.NaN) }).length).toBeGreaterThan(0))
  test('an annual visit does not ask for it', () => expect(missing({}, visit)).toEqual([]))
})

describe('other outcomes', () => {
  const left = ticked('left-in-bypass', 'customer-told')
  test('none chosen is the only thing asked', () => expect(missing({ outcome: null })).toEqual(['Choose how the visit ended.']))

  test.each([
    ['made-safe', left],
    ['no-access', []],
    ['bed-not-at-fault', ticked('bypass-returned', 'customer-told')],
  ] as const)('%s needs its reason, and no new bed', (outcome, checks) => {
    const change = { outcome, checks: [...checks], oldBed: null, newBed: null, partsUsed: [], measurements: [] }
    expect(missing({ ...change, reason: 'bypass leaks' })).toEqual([])
    expect(missing(change)).toEqual([expect.stringMatching(/needs a reason/)])
  })

  test('made safe with the old bed already out asks for safety and the cause', () => {
    const change = {
      outcome: 'made-safe' as const,
      checks: left,
      newBed: null,
      partsUsed: [],
      measurements: [],
      reason: 'tube stuck',
      oldBed: { takenOut: true, endCause: null, evidence: '' },
    }
    expect(missing(change)).toHaveLength(3)
  })

  test('made safe after the resin was poured asks for the bed that lies in the tank, and keeps it', () => {
    const checks = ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told')
    const broken = { ...rebed, outcome: 'made-safe' as const, checks, measurements: [], reason: 'beads keep coming' }
    const judged = (change: Partial<CloseOutRecord>, filled: boolean) => missingForCloseOut({ ...broken, ...change }, { ...usual, filled })
    expect(judged({}, true)).toEqual([])
    expect(judged({ newBed: null }, true)).toEqual(['Enter the new bed: resin, volume, gravel, tube length.'])
    expect(judged({ newBed: null }, false)).toEqual([])
  })

  test('a new softener made safe after it was filled has no old pressure to prove', () => {
    const change = {
      jobKind: 'installation' as const,
      outcome: 'made-safe' as const,
      checks: left,
      oldBed: null,
      measurements: [],
      reason: 'no brine',
    }
    expect(missing(change)).toEqual([])
    expect(missing({ ...change, jobKind: 'rebed', oldBed: rebed.oldBed })).toHaveLength(2)
  })

  test('condemned needs the cause and cannot hold a new bed', () => {
    const change = {
      outcome: 'condemned' as const,
      checks: left,
      reason: 'crack at the neck',
      oldBed: { takenOut: false, endCause: 'tank-cracked' as const, evidence: 'crack' },
    }
    expect(missing({ ...change, newBed: null, partsUsed: [] })).toEqual([])
    expect(missing({ ...change, checks: [...left, ...rebed.checks] })).toEqual([expect.stringMatching(/condemned tank can’t hold/)])
    expect(missing({ ...change, newBed: null, oldBed: null })).toEqual([expect.stringMatching(/why the old bed ended/)])
  })

  test.each(['no-access', 'bed-not-at-fault'] as const)('%s contradicts a changed bed', (outcome) => {
    expect(missing({ outcome, reason: 'nobody home', checks: ticked('customer-told', 'bypass-returned') })).toEqual([
      expect.stringMatching(/hoose/),
    ])
  })

  test('every outcome of an empty form lacks something, in whole sentences', () => {
    for (const outcome of visitOutcomes) {
      const sentences = missing({ outcome, checks: [], oldBed: null, newBed: null, partsUsed: [], measurements: [] })
      expect(sentences.length).toBeGreaterThan(0)
      for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/)
    }
  })
})
