import { formatHardnessGpg, formatWaterGal, formatWeightLb } from '@almanac/units/format'
import { formatMinute } from '@almanac/units/format-clock'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { gpgToMgL, mgLToGpg } from '@almanac/units/hardness'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { galToL, lToGal } from '@almanac/units/volume'
import type { CompensatedHardness } from '../water/compensated-hardness.ts'
import { type CardFacts, grainWords } from './card-facts.ts'
import type { CardLine } from './card-types.ts'
import type { DoseFigures } from './dose-figures.ts'

/** Two at night: the hour valves come set to (common practice, no source). */
const REGENERATES_AT_MINUTE = 120

/** What is entered at the valve: hardness and gallons by a meter, days by a timer; then the salt. */
export function enterLines(facts: CardFacts): CardLine[] {
  const { dose, setting, input, display } = facts
  const metered = input.control !== 'timer'
  return [
    ...(metered
      ? [hardnessLine(facts), capacityLine(facts), gallonsLine(facts), reserveLine(facts), overrideLine(facts)]
      : [daysLine(facts)]),
    saltLine(facts, dose),
    {
      id: 'hour',
      label: 'When it regenerates',
      value:
        setting.reserve.kind === 'days' && setting.reserve.days === 0 && metered
          ? 'right away; the other tank takes over'
          : `at night, ${formatMinute(REGENERATES_AT_MINUTE, display)}`,
      why: {
        title: 'When it regenerates',
        summary: 'It regenerates when few people use water.',
        inputs: [],
        formula: 'While it regenerates, a single softener lets hard water through, so it does it at night.',
        assumptions: [],
        missing: [],
        source: COMMON_PRACTICE,
      },
    },
  ]
}

function hardnessLine({ hardness, figures, display, sources, input }: CardFacts): CardLine {
  const entered =
    display.unitSystem === 'us' ? Math.ceil(hardness.compensatedGpg) : mgLToGpg(Math.ceil(gpgToMgL(hardness.compensatedGpg) / 10) * 10)
  const { ironGpgPerMgL, manganeseGpgPerMgL } = figures.allowance
  return {
    id: 'hardness',
    label: 'Hardness',
    value: formatHardnessGpg(entered, display),
    hint: compensatedHint(hardness),
    why: {
      title: 'Hardness to set for',
      summary: 'This is the raw water’s hardness plus an allowance for iron and manganese, rounded up.',
      inputs: [
        { name: 'Hardness', value: formatHardnessGpg(hardness.hardnessGpg, display), from: sources.hardnessGpg },
        { name: 'Iron', value: metal(input.ironMgL, display), from: sources.ironMgL },
        { name: 'Manganese', value: metal(input.manganeseMgL, display), from: sources.manganeseMgL },
        { name: 'Allowance for iron', value: `${ironGpgPerMgL} gpg for each mg/L` },
        { name: 'Allowance for manganese', value: `${manganeseGpgPerMgL} gpg for each mg/L` },
      ],
      formula: 'Hardness + allowance × iron + allowance × manganese.',
      assumptions: [
        ...(input.ironMgL === null ? ['Iron not measured: none assumed.'] : []),
        ...(input.manganeseMgL === null ? ['Manganese not measured: none assumed.'] : []),
      ],
      missing: [...(input.ironMgL === null ? ['iron'] : []), ...(input.manganeseMgL === null ? ['manganese'] : [])],
      source: `Allowances: ${COMMON_PRACTICE}; by charge alone iron would take 0.105 gpg per mg/L (derived).`,
    },
  }
}

const metal = (mgL: number | null, display: CardFacts['display']) => (mgL === null ? 'not measured' : `${showNumber(mgL, 2, display)} mg/L`)

function compensatedHint({ ironGpg, manganeseGpg }: CompensatedHardness): string | undefined {
  return ironGpg + manganeseGpg > 0 ? 'with the allowance for iron and manganese' : undefined
}

/** Down to what a meter can be set to: tens of gallons, fifties of litres. */
function roundedDown(gallons: number, display: CardFacts['display']): number {
  return display.unitSystem === 'us' ? Math.floor(gallons / 10) * 10 : lToGal(Math.floor(galToL(gallons) / 50 + 1e-9) * 50)
}

/** Grains that a head asks for, of one tank, down to what it can be set to. */
function capacityLine(facts: CardFacts): CardLine {
  const { setting, dose, display } = facts
  const eachGr = Math.floor(dose.capacityGr / setting.tanks / 100) * 100
  return {
    id: 'capacity',
    label: setting.tanks === 2 ? 'Capacity of each tank' : 'Capacity',
    value: grainWords(eachGr, display),
    hint: 'only if the valve asks for it: most work out the gallons from it and the hardness',
    why: {
      title: 'Capacity to enter',
      summary: 'This is what the bed takes up between two regenerations at this salt setting, as old as it is.',
      inputs: facts.capacityInputs,
      formula: 'Resin × capacity at this dose of salt × what age, temperature and dissolved solids leave of it, down to a hundred grains.',
      assumptions: facts.capacityAssumptions,
      missing: facts.capacityMissing,
      source: facts.capacitySource,
    },
  }
}

function gallonsLine(facts: CardFacts): CardLine {
  const { setting, hardness, display } = facts
  return {
    id: 'gallons',
    label: 'Water between regenerations',
    value: formatWaterGal(Math.max(0, roundedDown(setting.gallonsBetween, display)), display),
    hint: 'only if the valve asks for it; others work it out from capacity and hardness',
    why: {
      title: 'Water between regenerations',
      summary: 'This much water can be softened before the bed needs salt again, with the reserve kept back.',
      inputs: [...facts.capacityInputs, { name: 'Reserve capacity', value: facts.grains(setting.reserveGr) }],
      formula: `(Capacity ${facts.grains(facts.dose.capacityGr)} − reserve ${facts.grains(setting.reserveGr)}) ÷ hardness ${showNumber(hardness.compensatedGpg, 1, display)} gpg, rounded down.`,
      assumptions: facts.capacityAssumptions,
      missing: facts.capacityMissing,
      source: facts.capacitySource,
    },
  }
}

function reserveLine(facts: CardFacts): CardLine {
  const { setting, display, hardness } = facts
  const { reserve } = setting
  const rule =
    reserve.kind === 'days'
      ? reserve.days === 1
        ? 'one day’s use'
        : `${reserve.days} days’ use`
      : `${formatPercent(reserve.share, display)} of the capacity`
  const none = setting.reserveGr <= 0
  return {
    id: 'reserve',
    label: 'Reserve',
    value: none ? 'none' : formatWaterGal(setting.reserveGr / hardness.compensatedGpg, display),
    hint: none ? 'two tanks in turn need none' : rule,
    why: {
      title: 'Reserve',
      summary: 'The softener holds some capacity back so soft water lasts until the night.',
      inputs: [{ name: 'Rule', value: none ? 'none: the other tank takes over right away' : rule }, ...facts.useInputs],
      formula: 'Water people may still use between the moment the meter runs out and the night.',
      assumptions: [],
      missing: [],
      source: COMMON_PRACTICE,
    },
  }
}

function overrideLine({ setting, input, display }: CardFacts): CardLine {
  const metals = setting.mostDays < 14
  return {
    id: 'override',
    label: 'Day override',
    value: `${setting.mostDays} days`,
    hint: metals ? 'iron or manganese must not settle' : undefined,
    why: {
      title: 'Day override',
      summary: 'After this many days it regenerates, even if little water was used.',
      inputs: [
        { name: 'Iron', value: metal(input.ironMgL, display) },
        { name: 'Manganese', value: metal(input.manganeseMgL, display) },
      ],
      formula: 'A bed left standing packs and goes stale: at most 14 days, 4 where iron and manganese together reach 0.3 mg/L.',
      assumptions: [],
      missing: [],
      source: COMMON_PRACTICE,
    },
  }
}

function daysLine(facts: CardFacts): CardLine {
  const { dose, setting, display } = facts
  const whole = Math.round(dose.intervalDays)
  return {
    id: 'days',
    label: 'Regenerate every',
    value: whole === 1 ? 'day' : `${whole} days`,
    hint: 'a timer doesn’t know how much water was used',
    why: {
      title: 'Days between regenerations',
      summary: 'This is how many days the bed lasts on this home’s water before it needs salt again.',
      inputs: [...facts.capacityInputs, ...facts.useInputs, { name: 'Reserve capacity', value: facts.grains(setting.reserveGr) }],
      formula: `(Capacity ${facts.grains(dose.capacityGr)} − reserve ${facts.grains(setting.reserveGr)}) ÷ ${facts.grains(setting.dailyGr)} a day = ${showNumber(dose.days, 1, display)} days; whole days, at most ${setting.mostDays}.`,
      assumptions: facts.capacityAssumptions,
      missing: facts.capacityMissing,
      source: facts.capacitySource,
    },
  }
}

function saltLine(facts: CardFacts, dose: DoseFigures): CardLine {
  const { setting, display } = facts
  const eachLb = dose.saltLb / setting.tanks
  return {
    id: 'salt',
    label: setting.tanks === 2 ? 'Salt for each tank' : 'Salt',
    value: formatWeightLb(Math.round(eachLb * 10) / 10, display),
    hint: facts.doseHint,
    why: {
      title: 'Salt for one regeneration',
      summary: facts.doseReason,
      inputs: [
        { name: 'Dose', value: facts.doseWords(dose.saltLbFt3) },
        { name: 'Resin', value: facts.resinWords },
      ],
      formula:
        'Dose × resin. Each dose from 4 to 15 lb/ft³ of sodium chloride, or its equal in potassium chloride, is worked out for a year; of those that let little enough hardness through and last at least a day, we use the one that costs least.',
      assumptions: facts.capacityAssumptions,
      missing: facts.priceMissing,
      source: facts.capacitySource,
    },
  }
}
