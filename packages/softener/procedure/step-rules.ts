import type { CautionKind } from '@almanac/records/caution-kind'
import type { ProcedureAskId } from '@almanac/records/procedure-ask'
import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { type AmountKind, ruleOf } from '@almanac/units/amount-kinds'
import type { Ask, ProcedureContext, ProcedureStep, StepCaution } from './procedure-types.ts'
import type { AskKey, CautionKey, ProcedureWords, Say, StepKey } from './procedure-words.ts'

/** What steps depend on, worked out once from the context. */
export type StepFacts = ProcedureContext & {
  resinFt3: number
  /** Null when nobody knows whether there is gravel. */
  gravel: boolean | null
  commercial: boolean
  /** Whether two people may tip the tank to empty it; null where its size is not known. */
  tips: boolean | null
  /** Whether the tank is drawn from by a hub with laterals. */
  hub: boolean
  highPressure: boolean
  /** Of one bag of resin lifted from the floor to the neck (NIOSH); null where the equation gives none. */
  liftingIndex: number | null
  /** Amounts to act on, as the tablet shows them in large; null where they are not known. */
  doses: Readonly<Record<Dose, string | null>>
  /** What the sentences name, written with its unit: the length of the tube, resin, gravel, the outlet's limit, one bag and its lifting index, the drained tank, the dose of sanitiser, which tank of several. */
  named: Readonly<Record<'cutLength' | 'resin' | 'gravel' | 'limit' | 'bag' | 'index' | 'drained' | 'bleach' | 'tank', string>>
}

/** What a step puts in, or cuts to. */
export type Dose = 'cutLength' | 'gravel' | 'resin' | 'bleach'

type When = (facts: StepFacts) => boolean

/** A bed is in the tank: no earlier visit took it out. */
export const filled: When = ({ emptied }) => emptied !== true

type CautionRule = { kind: CautionKind; says: CautionKey | ((facts: StepFacts) => CautionKey); when?: When }
type AskRule = Pick<Ask, 'id' | 'kind' | 'amount' | 'required'> & { says: AskKey; values: readonly string[]; beads?: true; when?: When }

/**
 * A step as data, without its words: it applies when `when` holds (always, if absent); cautions and asks may have their own conditions. `title` and
 * `text` are keys of the words: those of its id where a rule says nothing else.
 */
export type StepRule = {
  id: ProcedureStepId
  title?: StepKey | ((facts: StepFacts) => StepKey)
  text?: StepKey | ((facts: StepFacts) => StepKey)
  minutes: number | ((facts: StepFacts) => number)
  dose?: Dose
  waitMinutes?: number | ((facts: StepFacts) => number)
  when?: When
  cautions?: readonly CautionRule[]
  asks?: readonly AskRule[]
}

/** The steps that apply, in the order of the rules, with conditions resolved, in words. */
export function buildSteps(rules: readonly StepRule[], facts: StepFacts, words: ProcedureWords): ProcedureStep[] {
  return rules.filter((rule) => rule.when === undefined || rule.when(facts)).map((rule) => buildStep(rule, facts, words))
}

function buildStep(rule: StepRule, facts: StepFacts, words: ProcedureWords): ProcedureStep {
  const applies = (item: { when?: When }) => item.when === undefined || item.when(facts)
  const say = words.steps as Say
  const text = typeof rule.text === 'function' ? rule.text(facts) : (rule.text ?? `${rule.id}/text`)
  return {
    id: rule.id,
    title: titleOf(rule, facts, say),
    dose: rule.dose === undefined ? null : facts.doses[rule.dose],
    text: say(text, facts.named),
    cautions: (rule.cautions ?? [])
      .filter(applies)
      .map(({ kind, says }) => cautionOf(kind, typeof says === 'string' ? says : says(facts), facts, words)),
    asks: (rule.asks ?? []).filter(applies).map((ask) => askOf(ask, words)),
    minutes: Math.max(1, Math.round(typeof rule.minutes === 'number' ? rule.minutes : rule.minutes(facts))),
    waitMinutes: typeof rule.waitMinutes === 'function' ? rule.waitMinutes(facts) : (rule.waitMinutes ?? null),
  }
}

/** Steps before a tank is chosen; all others of a softener with several tanks name theirs, so that none is done to the wrong one. */
const OF_THE_SITE: readonly ProcedureStepId[] = ['stop-and-refer', 'what-happened']

function titleOf({ id, title: key }: StepRule, facts: StepFacts, say: Say): string {
  const { twin, named } = facts
  const title = say(typeof key === 'function' ? key(facts) : (key ?? id))
  return twin && !OF_THE_SITE.includes(id) ? say('of-tank', { title, tank: named.tank }) : title
}

function cautionOf(kind: CautionKind, key: CautionKey, facts: StepFacts, words: ProcedureWords): StepCaution {
  return { kind, text: (words.cautions as Say)(key, facts.named) }
}

function askOf({ id, kind, amount, required, says, values, beads }: AskRule, words: ProcedureWords): Ask {
  const say = words.asks as Say
  const label = (value: string) =>
    beads && words.beadCondition.has(value as never) ? (words.beadCondition as Say)(value) : say(`${id}/${value}`)
  const unit = amount === null ? null : (ruleOf(amount).dimension.units[0] ?? '')
  return { id, label: say(says), kind, unit, amount, choices: values.map((value) => ({ value, label: label(value) })), required }
}

export function caution(kind: CautionKind, says: CautionRule['says'], when?: When): CautionRule {
  return { kind, says, when }
}

/** Something to tick; `says` where it is asked in other words than its id's. */
export function confirm(id: ProcedureAskId, { required = true, says = id }: { required?: boolean; says?: AskKey } = {}): AskRule {
  return { id, says, kind: 'confirm', amount: null, values: [], required }
}

/** A number to measure, kept in the unit of its kind. */
export function number(id: ProcedureAskId, amount: AmountKind, required = false, when?: When): AskRule {
  return { id, says: id, kind: 'number', amount, values: [], required, when }
}

/** One of several answers, by the values that are stored. */
export function choice(id: ProcedureAskId, values: readonly string[], required = true): AskRule {
  return { id, says: id, kind: 'choice', amount: null, values, required }
}

/** How the beads look: the values of `beadConditions`, in that record's own words, and others that only this step asks. */
export function beadChoice(id: ProcedureAskId, values: readonly string[]): AskRule {
  return { ...choice(id, values), beads: true }
}
