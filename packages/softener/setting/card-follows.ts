import { formatWaterGal, formatWeightLb } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { potassiumAddedMgL, SODIUM_ADVISORY_MG_L, sodiumPerGlassMg } from '../water/regeneration.ts'
import type { CardFacts } from './card-facts.ts'
import type { CardLine, WhyWords } from './card-types.ts'
import { CALIFORNIA_LEAST_GR_PER_LB, NSF_LEAST_GR_PER_LB, NSF_MOST_GAL_PER_1000_GR } from './efficiency-limits.ts'
import { WATER_SOURCE } from './standards.ts'

/** What the setting means for the house over a year, and against the published limits. */
export function followLines(facts: CardFacts): CardLine[] {
  const { dose, setting, display, input, card, why } = facts
  const asked = (title: string, summary: string, formula: string, source: string, more: Partial<WhyWords> = {}): WhyWords => ({
    ...{ title, summary, formula, source },
    ...{ inputs: facts.capacityInputs, assumptions: facts.capacityAssumptions, missing: facts.capacityMissing },
    ...more,
  })
  const year = { inputs: [...facts.capacityInputs, ...facts.useInputs] }
  const number = (value: number, digits: number) => showNumber(value, digits, display) ?? ''
  return [
    {
      id: 'interval',
      label: card('interval'),
      value: days(dose.intervalDays, facts),
      hint:
        dose.days > dose.intervalDays + 0.5
          ? card('heldTo', { days: days(dose.days, facts), held: days(dose.intervalDays, facts) })
          : undefined,
      why: asked(
        why('days'),
        why('days/sum'),
        why('interval/how', {
          capacity: facts.grains(dose.capacityGr),
          reserve: facts.grains(setting.reserveGr),
          daily: facts.grains(setting.dailyGr),
        }),
        facts.capacitySource,
        year,
      ),
    },
    {
      id: 'salt-year',
      label: card('saltYear'),
      value: formatWeightLb(dose.saltLbYear, display),
      why: asked(
        why('saltYear'),
        why('saltYear/sum'),
        why('saltYear/how', { count: number(dose.regenerationsYear, 0), salt: formatWeightLb(dose.saltLb, display) }),
        facts.capacitySource,
        year,
      ),
    },
    {
      id: 'water-year',
      label: card('waterYear'),
      value: formatWaterGal(dose.waterGalYear, display),
      hint: card('eachTime', { water: formatWaterGal(dose.waterGal, display) }),
      why: asked(why('waterYear'), why('waterYear/sum'), why('waterYear/how'), WATER_SOURCE, {
        assumptions: input.backwashGpm === null ? [why('assumed/backwash')] : [],
        missing: [],
      }),
    },
    {
      id: 'efficiency',
      label: card('efficiency'),
      value: `${number(dose.grPerLb, 0)} gr/lb`,
      hint: card(efficiencyOf(facts)),
      why: asked(
        why('efficiency'),
        why('efficiency/sum'),
        why('efficiency/how', { share: formatPercent(dose.grPerLb / 5994, display) }),
        why('efficiency/source'),
        { assumptions: [...facts.capacityAssumptions, why('assumed/limits')] },
      ),
    },
    {
      id: 'rinse-water',
      label: card('rinseWater'),
      value: formatWaterGal(dose.galPer1000Gr, display),
      hint: card(dose.galPer1000Gr <= NSF_MOST_GAL_PER_1000_GR ? 'rinse/within' : 'rinse/above'),
      why: asked(why('rinse'), why('rinse/sum'), why('rinse/how'), why('rinse/source')),
    },
    {
      id: 'leakage',
      label: card('leakage'),
      value: card('about', { amount: `${number(dose.leakageMgL, 1)} mg/L` }),
      hint: dose.fault === 'leaks' ? card('tooMuch') : undefined,
      why: asked(why('leakage'), why('leakage/sum'), why('leakage/how'), why('leakage/source'), {
        inputs: [{ name: why('in/dose'), value: facts.doseWords(dose.saltLbFt3) }],
        ...{ assumptions: [], missing: [] },
      }),
    },
    sodiumLine(facts),
  ]
}

function days(value: number, { card, display }: CardFacts): string {
  if (value < 1.05 && value >= 0.95) return card('day')
  return card('days', { days: showNumber(value, value < 10 ? 1 : 0, display) ?? '' })
}

function efficiencyOf({ dose, input }: CardFacts) {
  if (input.control === 'timer') return 'efficiency/timer'
  if (dose.grPerLb >= CALIFORNIA_LEAST_GR_PER_LB) return 'efficiency/both'
  return dose.grPerLb >= NSF_LEAST_GR_PER_LB ? 'efficiency/one' : 'efficiency/neither'
}

function sodiumLine({ setting, input, hardness, display, card, why }: CardFacts): CardLine {
  const potassium = input.salt === 'KCl'
  const glass = display.unitSystem === 'us' ? '8 fl oz' : '237 mL'
  return {
    id: 'sodium',
    label: card('sodiumAdded'),
    value: potassium ? card('none') : `${showNumber(setting.sodiumMgL, 0, display)} mg/L`,
    hint: potassium
      ? card('potassiumInstead')
      : card('inAGlass', { amount: showNumber(sodiumPerGlassMg(setting.sodiumMgL), 0, display) ?? '', glass }),
    why: {
      ...{ title: why('sodium'), summary: why('sodium/sum'), formula: why('sodium/how'), source: why('sodium/source') },
      inputs: [{ name: why('in/removed'), value: `${showNumber(hardness.hardnessGpg, 1, display)} gpg` }],
      assumptions: [],
      missing: [why('missing/sodium')],
    },
  }
}

/** What people who drink the water should know. */
export function drinkingCautions({ setting, input, hardness, display, card }: CardFacts): string[] {
  const whole = (value: number) => showNumber(value, 0, display) ?? ''
  if (input.salt === 'KCl') return [card('drinkPotassium', { amount: whole(potassiumAddedMgL(hardness.hardnessGpg)) })]
  if (setting.sodiumMgL < SODIUM_ADVISORY_MG_L) return []
  return [card('drinkSodium', { amount: whole(setting.sodiumMgL), most: String(SODIUM_ADVISORY_MG_L) })]
}
