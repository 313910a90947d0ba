import { type ProcedureStepId, procedureSteps } from '@almanac/records/procedure-step'
import { procedureFacts } from './procedure-facts.ts'
import type { ProcedureContext } from './procedure-types.ts'
import type { ProcedureWords, Say, StepKey } from './procedure-words.ts'
import type { StepFacts } from './step-rules.ts'

/** Steps whose brief the site decides. */
const DEPENDING: Readonly<Partial<Record<ProcedureStepId, (facts: StepFacts) => StepKey>>> = {
  'prove-bypass': ({ hasBypass, twin }) =>
    twin ? 'prove-bypass/brief-twin' : hasBypass === false ? 'prove-bypass/brief-none' : 'prove-bypass/brief',
  'pressure-off': ({ valveNeedsPower }) => (valveNeedsPower === false ? 'pressure-off/brief-by-hand' : 'pressure-off/brief'),
  'bonding-jumper': ({ metalPipe }) => (metalPipe === true ? 'bonding-jumper/brief' : 'bonding-jumper/brief-unknown'),
  'take-out-media': ({ tips }) =>
    tips === null ? 'take-out-media/brief-unknown' : tips ? 'take-out-media/brief' : 'take-out-media/brief-large',
  'cut-tube': ({ hub }) => (hub ? 'cut-tube/brief-hub' : 'cut-tube/brief'),
  'pour-gravel': ({ gravel }) => (gravel === null ? 'pour-gravel/brief-unknown' : 'pour-gravel/brief'),
  'clear-away': ({ emptied, waterSource }) =>
    emptied ? 'clear-away/brief-empty' : waterSource === 'private-well' ? 'clear-away/brief-well' : 'clear-away/brief',
}

/**
 * Each step of a rebed in a line or two, for paper, by its id, for this tank and site: nothing of its order or its conditions is lost, only the
 * explaining. Every step of `rebedProcedure` has one.
 */
export function rebedBriefs(context: ProcedureContext, words: ProcedureWords): Record<string, string> {
  const { facts } = procedureFacts(context, words)
  const briefs: Record<string, string> = {}
  for (const id of procedureSteps) {
    const key = DEPENDING[id]?.(facts) ?? `${id}/brief`
    if (!words.steps.has(key as StepKey)) continue
    const text = (words.steps as Say)(key, facts.named)
    briefs[id] = text.charAt(0).toUpperCase() + text.slice(1)
  }
  return briefs
}
