import type { Ask, ProcedureStep } from '@almanac/softener/procedure/procedure-types'
import type { Draft } from './draft.ts'
import { isOpen, type VisitReading } from './visit-amounts.ts'

/** A step as the list of steps shows it: whether it is done, and what was answered, in words; a tick has none. */
export type StepMark = { done: boolean; said: string }

/** What was answered to a question, in words; nothing for a tick. */
export function saidOf(ask: Ask, { answers }: Pick<Draft, 'answers'>): string {
  const answer = answers[ask.id]
  if (!answer?.text.trim() || ask.kind === 'confirm') return ''
  if (ask.kind === 'choice') return ask.choices.find((one) => one.value === answer.text)?.label ?? ''
  // What was typed with its unit says it already.
  return /\p{L}/u.test(answer.text) ? answer.text : `${answer.text} ${answer.unit ?? ''}`.trim().replace('ft3', 'ft³')
}

/**
 * How far a step is, by its answers and never by the place reached: done is one whose questions are settled and that was answered or, where it asks nothing that
 * must be answered, gone on from.
 */
export function stepMark(step: ProcedureStep, draft: Pick<Draft, 'answers' | 'passed'>, by: VisitReading): StepMark {
  const { answers, passed } = draft
  const settled = step.asks.every((ask) => !isOpen(ask, answers[ask.id], by))
  const touched = step.asks.some((ask) => answers[ask.id]?.text.trim()) || passed.includes(step.id)
  const said = step.asks.map((ask) => saidOf(ask, draft)).filter((text) => text !== '')
  return { done: settled && touched, said: said.join(', ') }
}
