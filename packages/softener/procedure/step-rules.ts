import type { ProcedureAskId } from '@almanac/records/procedure-ask'
import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { type AmountKind, ruleOf } from '@almanac/units/amount-kinds'
import type { Ask, Caution, CautionKind, ProcedureContext, ProcedureStep } from './procedure-types.ts'

/** What steps depend on, worked out once from the context. */
export type Facts = ProcedureContext & {
  resinFt3: number
  /** Null when nobody knows whether there is gravel. */
  gravel: boolean | null
  commercial: boolean
  highPressure: boolean
  cutLength: string
  resinText: string
  gravelText: string
  bagLift: string
  /** What the outlet must stay below. */
  outletLimit: string
}

type When = (facts: Facts) => boolean

/** A step as data: it applies when `when` holds (always, if absent); cautions and asks may have their own conditions. */
export type StepRule = {
  id: ProcedureStepId
  title: string
  text: string | ((facts: Facts) => string)
  minutes: number | ((facts: Facts) => number)
  when?: When
  cautions?: readonly (Caution & { when?: When })[]
  asks?: readonly (Ask & { when?: When })[]
}

/** The steps that apply, in the order of the rules, with conditions resolved. */
export function buildSteps(rules: readonly StepRule[], facts: Facts): ProcedureStep[] {
  return rules.filter((rule) => rule.when === undefined || rule.when(facts)).map((rule) => buildStep(rule, facts))
}

function buildStep(rule: StepRule, facts: Facts): ProcedureStep {
  const applies = (item: { when?: When }) => item.when === undefined || item.when(facts)
  return {
    id: rule.id,
    title: rule.title,
    text: typeof rule.text === 'string' ? rule.text : rule.text(facts),
    cautions: (rule.cautions ?? []).filter(applies).map(({ kind, text }) => ({ kind, text })),
    asks: (rule.asks ?? [])
      .filter(applies)
      .map(({ id, label, kind, unit, amount, choices, required }) => ({ id, label, kind, unit, amount, choices, required })),
    minutes: Math.max(1, Math.round(typeof rule.minutes === 'number' ? rule.minutes : rule.minutes(facts))),
  }
}

export function caution(kind: CautionKind, text: string, when?: When): Caution & { when?: When } {
  return when === undefined ? { kind, text } : { kind, text, when }
}

export function confirm(id: ProcedureAskId, label: string, required = true, when?: When): Ask & { when?: When } {
  return { id, label, kind: 'confirm', unit: null, amount: null, choices: [], required, ...(when ? { when } : {}) }
}

/** A number to measure, kept in the unit of its kind. */
export function number(id: ProcedureAskId, label: string, amount: AmountKind, required = false, when?: When): Ask & { when?: When } {
  const unit = ruleOf(amount).dimension.units[0] ?? ''
  return { id, label, kind: 'number', unit, amount, choices: [], required, ...(when ? { when } : {}) }
}

/** The choices of a word list: each of its values once, in the words people read. */
export function worded<V extends string>(words: Readonly<Record<V, string>>): string[] {
  return Object.entries<string>(words).map(([value, label]) => `${value}: ${label}`)
}

/** Choices are written as "value: label". */
export function choice(id: ProcedureAskId, label: string, options: readonly string[], required = true): Ask {
  const choices = options.map((option) => {
    const [value = '', ...rest] = option.split(':')
    return { value: value.trim(), label: (rest.join(':') || value).trim() }
  })
  return { id, label, kind: 'choice', unit: null, amount: null, choices, required }
}
