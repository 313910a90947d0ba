import { oneOf } from './choices.ts'

/**
 * Answers after which no further step follows, as `question/answer`: each leads to a safe ending and forbids "done". What that ending is:
 * service-rules/close-out/safe-ending. A name once used is never given another meaning: closed visits carry it.
 */
export const visitStops = [
  'stop-case/lead-line',
  'stop-case/asbestos',
  'stop-case/crawl-space',
  'stop-case/boil-water',
  'stop-case/cracked-tank',
  'stop-case/permit',
  'bypass-holds/cannot',
  'tank-condition/cracked',
  'tank-condition/thread',
  'drain-clear/beads',
  'brine-draw/none',
  'fault/distributor',
  'burst-from/tank',
  'left-as/in-bypass',
] as const
export type VisitStop = (typeof visitStops)[number]

/** The stop that an answer is; null where the work goes on. */
export const stopOfAnswer = (ask: string, answer: string): VisitStop | null => oneOf(visitStops, `${ask}/${answer}`)

/** What leaves a house safe after a stop, ticked on its own page and kept among the answers. */
export const safeSteps = [
  'put-back',
  'left-in-bypass',
  'pressure-off-again',
  'lines-plugged',
  'heater-on',
  'stop-photographed',
  'customer-told',
] as const
export type SafeStep = (typeof safeSteps)[number]
