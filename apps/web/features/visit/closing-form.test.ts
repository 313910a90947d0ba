import { wordsIn } from '@almanac/words/words-in'
import { expect, test } from 'vitest'
import { type Draft, emptyDraft, entered } from './draft.ts'
import { earlierDraft } from './earlier-draft.ts'
import { shownDraft } from './prefilled.ts'
import { readDraft } from './read-draft.ts'

// Chicago keeps UTC−6 in December: 05:30 UTC is half past eleven in the evening before.
const CHICAGO = { timeZone: 'America/Chicago', beadWords: wordsIn('en-US', 'beadCondition') }
const at = '2026-12-02T05:30:00.000Z'
const answer = (text: string, unit: string | null = null) => ({ text, unit, value: null, at })
const answered: Draft = {
  ...emptyDraft,
  startedAt: '2026-12-02T04:00:00.000Z',
  answers: {
    'old-tube-length-in': answer('54', 'in'),
    'old-beads': answer('mushy'),
    'resin-ft3': answer('1 1/2', 'ft3'),
    'gravel-lb': answer('18', 'lb'),
    'new-tube-length-in': answer('52 5/8', 'in'),
  },
}
const shown = (part: Partial<Draft> = {}, now = at) => shownDraft({ ...answered, ...part }, { ...CHICAGO, now })

test('what nobody touched shows what the steps say', () => {
  expect(shown()).toMatchObject({ takenOut: true, endCause: 'oxidised', volume: '1 1/2', volumeUnit: 'ft3', gravel: '18', tube: '52 5/8' })
})

test.each([
  ['takenOut', false],
  ['endCause', ''],
  ['evidence', ''],
  ['volume', ''],
  ['gravel', ''],
  ['tube', ''],
  ['workDay', ''],
] as const)('%s stays cleared, though the steps say otherwise', (name, empty) => {
  expect(shown()[name]).not.toBe(empty)
  const cleared = { [name]: entered(empty) }
  expect(shown(cleared)[name]).toBe(empty)
  const reopened = readDraft(JSON.stringify({ ...answered, ...cleared }))
  expect(shownDraft(reopened, { ...CHICAGO, now: at })[name]).toBe(empty)
})

test('what was set stands against what the steps say later', () => {
  expect(shown({ volume: entered('2') }).volume).toBe('2')
  expect(shown({ takenOut: entered(true), answers: {} }).takenOut).toBe(true)
})

test('work begun before midnight is of that day, whenever it is finished or sent', () => {
  expect(shown({}, '2026-12-02T06:30:00.000Z').workDay).toBe('2026-12-01')
  expect(shown({ finishedAt: '2026-12-02T06:10:00.000Z' }, '2026-12-02T15:00:00.000Z').workDay).toBe('2026-12-01')
  expect(shown({ workDay: entered('2026-11-30') }, '2026-12-02T15:00:00.000Z').workDay).toBe('2026-11-30')
})

test('hours are as the tablet noted them until somebody corrects them; an end before the begin is of the day after', () => {
  const noted = { finishedAt: '2026-12-02T05:10:00.000Z' }
  expect(shown(noted)).toMatchObject({ beganClock: '22:00', endedClock: '23:10', startedAt: answered.startedAt, ...noted })
  // 21:15 on December 1 in Chicago is 03:15 UTC of the 2nd.
  expect(shown({ ...noted, beganClock: entered('21:15') }).startedAt).toBe('2026-12-02T03:15:00.000Z')
  expect(shown({ ...noted, endedClock: entered('00:20') }).finishedAt).toBe('2026-12-02T06:20:00.000Z')
  expect(shown({ ...noted, beganClock: entered('') }).startedAt).toBeNull()
  expect(shown({ ...noted, workDay: entered('2026-11-30'), beganClock: entered('08:00'), endedClock: entered('09:30') })).toMatchObject({
    startedAt: '2026-11-30T14:00:00.000Z',
    finishedAt: '2026-11-30T15:30:00.000Z',
  })
})

// As a tablet kept it before the form knew what was cleared: texts and a plain tick.
const FIRST_FORM = JSON.stringify({
  ...{
    startedAt: at,
    step: 28,
    answers: { ...answered.answers, 'old-beads': answer('soft') },
    outcome: 'done',
    takenOut: true,
    endCause: 'worn',
    evidence: '',
    resinKind: 'gel-10',
  },
  ...{ volume: '2', volumeUnit: 'ft3', gravel: '', gravelUnit: '', tube: '', tubeUnit: '', parts: null, reason: '', hardnessReason: '' },
  ...{ notes: 'gate sticks', commandId: 'c' },
})

test('a draft of the form before opens with all that was typed', () => {
  const draft = readDraft(FIRST_FORM)
  expect(draft).toMatchObject({ step: 28, outcome: 'done', resinKind: 'gel-10', notes: 'gate sticks', finishedAt: null })
  expect(shownDraft(draft, { ...CHICAGO, now: at })).toMatchObject({
    takenOut: true,
    endCause: 'worn',
    volume: '2',
    gravel: '18',
    tube: '52 5/8',
  })
  expect(shownDraft(draft, { ...CHICAGO, now: at }).evidence).toBe('Mushy: most crush between the fingers')
  expect(draft.answers['old-beads']?.text).toBe('mushy')
})

test.each([[null], ['{'], ['null'], ['7']])('%j is no draft: an empty one opens', (text) => expect(readDraft(text)).toEqual(emptyDraft))

test('what the release before kept by visit is found for its job: this visit’s first, else another’s, and no other person’s', () => {
  const shelf = 'almanac:visit:firm:ann:'
  const kept = new Map([
    [`${shelf}old`, JSON.stringify({ ...answered, jobId: 'job' })],
    [`${shelf}other`, JSON.stringify({ ...answered, jobId: 'another' })],
    ['almanac:visit:firm:bob:old', JSON.stringify({ ...answered, jobId: 'job' })],
    [`${shelf}begun`, JSON.stringify({ ...emptyDraft, jobId: 'job', startedAt: at })],
    [`${shelf}before`, FIRST_FORM],
  ])
  const store = { length: kept.size, key: (i: number) => [...kept.keys()][i] ?? null, getItem: (key: string) => kept.get(key) ?? null }
  const found = (visitId: string, jobId: string) => earlierDraft(store, shelf, visitId, jobId)
  expect(found('new', 'job')).toMatchObject({ key: `${shelf}old`, draft: { visitId: 'old' } })
  expect(found('begun', 'job')).toMatchObject({ key: `${shelf}begun`, draft: { startedAt: at } })
  expect(found('before', 'job')).toMatchObject({ draft: { resinKind: 'gel-10' } })
  expect(found('new', 'third')).toBeNull()
})
