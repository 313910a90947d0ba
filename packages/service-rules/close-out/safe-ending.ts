import type { JobKind } from '@almanac/records/job-kind'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import { type SafeStep, stopOfAnswer, type VisitStop } from '@almanac/records/visit-stop'

/** Questions and their answers as stored: a confirmation is "yes". */
export type AnswerTexts = Readonly<Record<string, string>>

/** How far a softener is taken apart: nothing yet, shut off and without pressure, valve off, or put together and under water again. */
export type Opening = 'untouched' | 'shut-off' | 'open' | 'running'

/** What a stop asks for: what leaves the house safe, in order, and how the visit may end. */
export type SafeEnding = { stop: VisitStop; opening: Opening; steps: readonly SafeStep[]; outcomes: readonly VisitOutcome[] }

const WITH_BED: readonly VisitOutcome[] = ['done', 'made-safe', 'left-as-found', 'no-access', 'bed-not-at-fault', 'condemned']
/** How each kind of job may end. Without a bed of the customer's at the beginning, none can be found sound or ended. Common practice, no source. */
export const outcomesOfKind: Readonly<Record<JobKind, readonly VisitOutcome[]>> = {
  rebed: WITH_BED,
  'annual-visit': WITH_BED,
  cleaning: WITH_BED,
  inspection: WITH_BED,
  repair: WITH_BED,
  'warranty-return': WITH_BED,
  exchange: WITH_BED,
  emergency: WITH_BED,
  installation: ['done', 'made-safe', 'left-as-found', 'no-access'],
  delivery: ['done', 'left-as-found', 'no-access'],
}

/** Stops that hand the work to somebody else before it has begun; once something was opened it is made safe instead. */
const REFERRED: readonly VisitOutcome[] = ['left-as-found']
const RETURN: readonly VisitOutcome[] = ['made-safe']
const TANK: readonly VisitOutcome[] = ['condemned', 'made-safe']

/** How a visit may end after each stop, and what that stop asks for beside closing what is open. Common practice, no source. */
const STOPS: Readonly<Record<VisitStop, { outcomes: readonly VisitOutcome[]; also: readonly SafeStep[] }>> = {
  'stop-case/lead-line': { outcomes: REFERRED, also: [] },
  'stop-case/asbestos': { outcomes: REFERRED, also: [] },
  'stop-case/crawl-space': { outcomes: REFERRED, also: [] },
  'stop-case/boil-water': { outcomes: REFERRED, also: [] },
  'stop-case/cracked-tank': { outcomes: TANK, also: ['pressure-off-again', 'stop-photographed'] },
  'stop-case/permit': { outcomes: REFERRED, also: [] },
  'bypass-holds/cannot': { outcomes: REFERRED, also: [] },
  'tank-condition/cracked': { outcomes: TANK, also: ['stop-photographed'] },
  'tank-condition/thread': { outcomes: TANK, also: ['stop-photographed'] },
  'drain-clear/beads': { outcomes: RETURN, also: ['pressure-off-again', 'stop-photographed'] },
  'brine-draw/none': { outcomes: RETURN, also: [] },
  'fault/distributor': { outcomes: RETURN, also: [] },
  'burst-from/tank': { outcomes: TANK, also: ['pressure-off-again', 'stop-photographed'] },
  'left-as/in-bypass': { outcomes: RETURN, also: [] },
}

/** What an answer says of how far the softener is open; the last of these that was answered counts. */
const OPENED_BY: readonly { ask: string; answers: readonly string[]; opening: Opening }[] = [
  { ask: 'bypass-holds', answers: ['holds', 'leaks'], opening: 'shut-off' },
  { ask: 'pressure-zero', answers: ['yes'], opening: 'shut-off' },
  { ask: 'valve-off', answers: ['yes'], opening: 'open' },
  { ask: 'strainer-on', answers: ['yes'], opening: 'running' },
]
const CLOSED_BY: Readonly<Record<Exclude<Opening, 'untouched'>, readonly SafeStep[]>> = {
  'shut-off': ['left-in-bypass'],
  open: ['left-in-bypass', 'lines-plugged'],
  running: ['left-in-bypass', 'pressure-off-again'],
}

/** An answer to a question that is no longer asked says nothing: where water burst from, in an emergency that turned out to be another. */
const ASKED_ONLY: Readonly<Record<string, readonly [ask: string, answer: string]>> = { 'burst-from': ['happened', 'burst'] }

/** The stops among the answers, in the order of the answers. */
export function stopsAmong(answers: AnswerTexts): VisitStop[] {
  return Object.entries(answers).flatMap(([ask, answer]) => {
    const only = ASKED_ONLY[ask]
    if (only && answers[only[0]] !== only[1]) return []
    return stopOfAnswer(ask, answer) ?? []
  })
}

/** How far the softener is open after these answers. */
export function openingAfter(answers: AnswerTexts): Opening {
  return OPENED_BY.findLast(({ ask, answers: those }) => those.includes(answers[ask] ?? ''))?.opening ?? 'untouched'
}

/** What a stop leads to after these answers, for a kind of job: never to a next step, always to an outcome. */
export function safeEnding(stop: VisitStop, kind: JobKind, answers: AnswerTexts): SafeEnding {
  const opening = openingAfter(answers)
  const { outcomes: those, also } = STOPS[stop]
  const referred = those === REFERRED
  const ends = referred && opening !== 'untouched' ? RETURN : those
  const possible = ends.filter((one) => outcomesOfKind[kind].includes(one))
  const first: readonly SafeStep[] = opening === 'untouched' ? [referred ? 'put-back' : 'left-in-bypass'] : CLOSED_BY[opening]
  const heater: readonly SafeStep[] = answers['hot-side-closed'] === 'yes' ? ['heater-on'] : []
  const steps: SafeStep[] = [...first, ...also, ...heater, 'customer-told']
  return { stop, opening, steps: [...new Set(steps)], outcomes: possible }
}

/** How a visit of this kind may end after its answers: "done" only while no stop stands, and only what fits all of them. */
export function outcomesAfter(kind: JobKind, answers: AnswerTexts): readonly VisitOutcome[] {
  const endings = stopsAmong(answers).map((stop) => safeEnding(stop, kind, answers).outcomes)
  const fits = outcomesOfKind[kind].filter((one) => endings.every((outcomes) => outcomes.includes(one)))
  // Two stops that ask for different ends: the house is left safe and somebody comes back.
  return fits.length > 0 ? fits : outcomesOfKind[kind].filter((one) => RETURN.includes(one))
}
