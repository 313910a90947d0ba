import { formatWaterGal, formatWeightLb } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { potassiumAddedMgL, SODIUM_ADVISORY_MG_L, sodiumPerGlassMg } from '../water/regeneration.ts'
import type { CardFacts } from './card-facts.ts'
import type { CardLine, WhyWords } from './card-types.ts'
import { CALIFORNIA_LEAST_GR_PER_LB, NSF_LEAST_GR_PER_LB, NSF_MOST_GAL_PER_1000_GR } from './efficiency-limits.ts'

/** What the setting means for the house over a year, and against the published limits. */
export function followLines(facts: CardFacts): CardLine[] {
  const { dose, setting, display, input } = facts
  const why = (title: string, summary: string, formula: string, source: string, more: Partial<WhyWords> = {}): WhyWords => ({
    ...{
      title,
      summary,
      formula,
      source,
      inputs: facts.capacityInputs,
      assumptions: facts.capacityAssumptions,
      missing: facts.capacityMissing,
    },
    ...more,
  })
  const year = { inputs: [...facts.capacityInputs, ...facts.useInputs] }
  return [
    {
      id: 'interval',
      label: 'Regenerates about every',
      value: days(dose.intervalDays, display),
      hint:
        dose.days > dose.intervalDays + 0.5
          ? `it could go ${days(dose.days, display)}; held to ${days(dose.intervalDays, display)}`
          : undefined,
      why: why(
        'Days between regenerations',
        'This is how many days the bed lasts on this home’s water before it needs salt again.',
        `(V·K(S)·f − reserve) ÷ (gallons a day × hardness) = (${facts.grains(dose.capacityGr)} − ${facts.grains(setting.reserveGr)}) ÷ ${facts.grains(setting.dailyGr)}.`,
        facts.capacitySource,
        year,
      ),
    },
    {
      id: 'salt-year',
      label: 'Salt a year',
      value: formatWeightLb(dose.saltLbYear, display),
      why: why(
        'Salt a year',
        'This is how much salt the home uses in a year at this setting.',
        `${showNumber(dose.regenerationsYear, 0, display)} regenerations × ${formatWeightLb(dose.saltLb, display)}.`,
        facts.capacitySource,
        year,
      ),
    },
    {
      id: 'water-year',
      label: 'Water for regenerating a year',
      value: formatWaterGal(dose.waterGalYear, display),
      hint: `${formatWaterGal(dose.waterGal, display)} each time`,
      why: why(
        'Water for regenerating',
        'This is the water that goes down the drain in a year of regenerations.',
        'Backwash flow × minutes, brine at about 10%, 10 gal/ft³ of slow rinse and 1.75 gpm/ft³ of fast rinse, for each regeneration.',
        'Davis 2010; UFC 3-240-13FN; Ten States Standards §4.4.2',
        {
          assumptions: input.backwashGpm === null ? ['Backwash flow not known: your company’s usual flow for this tank is used.'] : [],
          missing: [],
        },
      ),
    },
    {
      id: 'efficiency',
      label: 'Hardness removed per pound of salt',
      value: `${showNumber(dose.grPerLb, 0, display)} gr/lb`,
      hint: efficiencyWords(facts),
      why: why(
        'Salt efficiency',
        'The more hardness each pound of salt removes, the less salt is wasted.',
        `Capacity ÷ salt, counted as sodium chloride. At most 5,994 gr per lb by charge, so this is ${formatPercent(dose.grPerLb / 5994, display)}.`,
        'NSF/ANSI 44 (as described by trade press and PNNL): 3,350 gr/lb, 5 gal per 1,000 gr, regenerated on demand; California Health and Safety Code 116785: 4,000 gr/lb',
        {
          assumptions: [
            ...facts.capacityAssumptions,
            'The limits are for new units as tested; an older bed in cold water gives less, so this shows how it is now.',
          ],
        },
      ),
    },
    {
      id: 'rinse-water',
      label: 'Water for each 1,000 grains',
      value: formatWaterGal(dose.galPer1000Gr, display),
      hint: dose.galPer1000Gr <= NSF_MOST_GAL_PER_1000_GR ? 'within 5 gal of NSF/ANSI 44' : 'above 5 gal of NSF/ANSI 44',
      why: why(
        'Regeneration water',
        'This is how much water it takes to win back 1,000 grains of capacity.',
        'Water of one regeneration ÷ capacity in thousands of grains.',
        'NSF/ANSI 44 (as described by trade press and PNNL)',
      ),
    },
    {
      id: 'leakage',
      label: 'Hardness leakage',
      value: `about ${showNumber(dose.leakageMgL, 1, display)} mg/L`,
      hint: dose.fault === 'leaks' ? 'too much' : undefined,
      why: why(
        'Hardness leakage',
        'A little hardness gets through even a good bed; more salt lets less through.',
        'About 5 mg/L at 8 lb/ft³, less with more salt in proportion; above 1,000 mg/L of dissolved solids more, by their square.',
        'Michaud, Water Conditioning & Purification; dose and solids from memory, unverified',
        { inputs: [{ name: 'Dose', value: facts.doseWords(dose.saltLbFt3) }], assumptions: [], missing: [] },
      ),
    },
    sodiumLine(facts),
  ]
}

function days(value: number, display: CardFacts['display']): string {
  const shown = showNumber(value, value < 10 ? 1 : 0, display)
  return value < 1.05 && value >= 0.95 ? 'day' : `${shown} days`
}

function efficiencyWords({ dose, input }: CardFacts): string {
  if (input.control === 'timer') return 'a timer does not regenerate on demand, as both limits ask'
  if (dose.grPerLb >= CALIFORNIA_LEAST_GR_PER_LB) return 'meets 4,000 of California and 3,350 of NSF/ANSI 44'
  if (dose.grPerLb >= NSF_LEAST_GR_PER_LB) return 'meets 3,350 of NSF/ANSI 44, not 4,000 of California'
  return 'below 3,350 of NSF/ANSI 44'
}

function sodiumLine({ setting, input, hardness, display }: CardFacts): CardLine {
  const potassium = input.salt === 'KCl'
  return {
    id: 'sodium',
    label: 'Sodium added to the water',
    value: potassium ? 'none' : `${showNumber(setting.sodiumMgL, 0, display)} mg/L`,
    hint: potassium
      ? 'potassium instead'
      : `${showNumber(sodiumPerGlassMg(setting.sodiumMgL), 0, display)} mg in a glass of ${display.unitSystem === 'us' ? '8 fl oz' : '237 mL'}`,
    why: {
      title: 'Sodium added',
      summary: 'Softening trades hardness for sodium: the harder the water, the more sodium.',
      inputs: [{ name: 'Hardness removed', value: `${showNumber(hardness.hardnessGpg, 1, display)} gpg` }],
      formula:
        'Each calcium is exchanged for two sodium: 7.864 mg/L of sodium for each gpg, 0.4594 mg for each mg of hardness. Sodium in the raw water is extra.',
      assumptions: [],
      missing: ['sodium of the raw water'],
      source: 'derived from atomic weights; EPA drinking-water advisory for sodium',
    },
  }
}

/** What people who drink the water should know. */
export function drinkingCautions({ setting, input, hardness, display }: CardFacts): string[] {
  if (input.salt === 'KCl')
    return [
      `Softening adds about ${showNumber(potassiumAddedMgL(hardness.hardnessGpg), 0, display)} mg/L of potassium. Anyone with kidney trouble or told to watch potassium should ask their doctor before drinking it (common practice, no source).`,
    ]
  if (setting.sodiumMgL < SODIUM_ADVISORY_MG_L) return []
  return [
    `Softening adds about ${showNumber(setting.sodiumMgL, 0, display)} mg/L of sodium. For people on a diet of at most 500 mg of sodium a day the EPA advises no more than ${SODIUM_ADVISORY_MG_L} mg/L in drinking water: tell the household, and leave one tap unsoftened for drinking and cooking.`,
  ]
}
