import { formatHardnessGpg, formatWaterGal, formatWeightLb } from '@almanac/units/format'
import { formatMinute } from '@almanac/units/format-clock'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { gpgToMgL, mgLToGpg } from '@almanac/units/hardness'
import { galToL, lToGal } from '@almanac/units/volume'
import { type CardFacts, grainWords } from './card-facts.ts'
import type { CardLine, WhyWords } from './card-types.ts'

/** Two at night: the hour valves come set to (common practice, no source). */
const REGENERATES_AT_MINUTE = 120

/** What is entered at the valve: hardness and gallons by a meter, days by a timer; then the salt. */
export function enterLines(facts: CardFacts): CardLine[] {
  const metered = facts.input.control !== 'timer'
  return [
    ...(metered
      ? [hardnessLine(facts), capacityLine(facts), gallonsLine(facts), reserveLine(facts), overrideLine(facts)]
      : [daysLine(facts)]),
    saltLine(facts),
    hourLine(facts, metered),
  ]
}

/** What is not said of a line. */
const BARE: Pick<WhyWords, 'inputs' | 'assumptions' | 'missing'> = { inputs: [], assumptions: [], missing: [] }

function hourLine({ setting, card, why, display }: CardFacts, metered: boolean): CardLine {
  const inTurn = setting.reserve.kind === 'days' && setting.reserve.days === 0 && metered
  return {
    id: 'hour',
    label: card('hour'),
    value: inTurn ? card('rightAway') : card('atNight', { time: formatMinute(REGENERATES_AT_MINUTE, display) }),
    why: { ...BARE, title: why('hour'), summary: why('hour/sum'), formula: why('hour/how'), source: why('practice') },
  }
}

function hardnessLine(facts: CardFacts): CardLine {
  const { hardness, figures, display, sources, input, card, why } = facts
  const entered =
    display.unitSystem === 'us' ? Math.ceil(hardness.compensatedGpg) : mgLToGpg(Math.ceil(gpgToMgL(hardness.compensatedGpg) / 10) * 10)
  const { ironGpgPerMgL, manganeseGpgPerMgL } = figures.allowance
  const perMgL = (gpg: number) => why('in/perMgL', { gpg: String(gpg) })
  return {
    id: 'hardness',
    label: card('hardness'),
    value: formatHardnessGpg(entered, display),
    hint: hardness.ironGpg + hardness.manganeseGpg > 0 ? card('withAllowance') : undefined,
    why: {
      title: why('hardness'),
      summary: why('hardness/sum'),
      inputs: [
        { name: why('in/hardness'), value: formatHardnessGpg(hardness.hardnessGpg, display), from: sources.hardnessGpg },
        { name: why('in/iron'), value: metal(input.ironMgL, facts), from: sources.ironMgL },
        { name: why('in/manganese'), value: metal(input.manganeseMgL, facts), from: sources.manganeseMgL },
        { name: why('in/ironAllowance'), value: perMgL(ironGpgPerMgL) },
        { name: why('in/manganeseAllowance'), value: perMgL(manganeseGpgPerMgL) },
      ],
      formula: why('hardness/how'),
      assumptions: [
        ...(input.ironMgL === null ? [why('assumed/iron')] : []),
        ...(input.manganeseMgL === null ? [why('assumed/manganese')] : []),
      ],
      missing: [
        ...(input.ironMgL === null ? [why('missing/iron')] : []),
        ...(input.manganeseMgL === null ? [why('missing/manganese')] : []),
      ],
      source: why('hardness/source'),
    },
  }
}

const metal = (mgL: number | null, { display, why }: CardFacts) =>
  mgL === null ? why('notMeasured') : `${showNumber(mgL, 2, display)} mg/L`

/** Down to what a meter can be set to: tens of gallons, fifties of litres. */
function roundedDown(gallons: number, display: CardFacts['display']): number {
  return display.unitSystem === 'us' ? Math.floor(gallons / 10) * 10 : lToGal(Math.floor(galToL(gallons) / 50 + 1e-9) * 50)
}

/** What hangs on the bed's capacity is assumed, missing and sourced as the capacity is. */
const byCapacity = (facts: CardFacts) => ({
  assumptions: facts.capacityAssumptions,
  missing: facts.capacityMissing,
  source: facts.capacitySource,
})

/** Grains that a head asks for, of one tank, down to what it can be set to. */
function capacityLine(facts: CardFacts): CardLine {
  const { setting, dose, display, card, why } = facts
  const eachGr = Math.floor(dose.capacityGr / setting.tanks / 100) * 100
  return {
    id: 'capacity',
    label: card(setting.tanks === 2 ? 'capacityEach' : 'capacity'),
    value: grainWords(eachGr, display),
    hint: card('capacityHint'),
    why: {
      ...{ title: why('capacity'), summary: why('capacity/sum'), formula: why('capacity/how') },
      inputs: facts.capacityInputs,
      ...byCapacity(facts),
    },
  }
}

function gallonsLine(facts: CardFacts): CardLine {
  const { setting, hardness, display, card, why } = facts
  return {
    id: 'gallons',
    label: card('between'),
    value: formatWaterGal(Math.max(0, roundedDown(setting.gallonsBetween, display)), display),
    hint: card('betweenHint'),
    why: {
      title: why('between'),
      summary: why('between/sum'),
      inputs: [...facts.capacityInputs, { name: why('in/reserve'), value: facts.grains(setting.reserveGr) }],
      formula: why('between/how', {
        capacity: facts.grains(facts.dose.capacityGr),
        reserve: facts.grains(setting.reserveGr),
        hardness: showNumber(hardness.compensatedGpg, 1, display) ?? '',
      }),
      ...byCapacity(facts),
    },
  }
}

function reserveLine(facts: CardFacts): CardLine {
  const { setting, display, hardness, card, why } = facts
  const { reserve } = setting
  const rule =
    reserve.kind === 'days'
      ? card('daysUse', { days: reserve.days })
      : card('shareOfCapacity', { share: formatPercent(reserve.share, display) })
  const none = setting.reserveGr <= 0
  return {
    id: 'reserve',
    label: card('reserve'),
    value: none ? card('none') : formatWaterGal(setting.reserveGr / hardness.compensatedGpg, display),
    hint: none ? card('noReserve') : rule,
    why: {
      ...BARE,
      title: why('reserve'),
      summary: why('reserve/sum'),
      inputs: [{ name: why('in/rule'), value: none ? why('in/noRule') : rule }, ...facts.useInputs],
      formula: why('reserve/how'),
      source: why('practice'),
    },
  }
}

function overrideLine(facts: CardFacts): CardLine {
  const { setting, input, card, why } = facts
  const metals = setting.mostDays < 14
  return {
    id: 'override',
    label: card('override'),
    value: card('wholeDays', { days: setting.mostDays }),
    hint: metals ? card('overrideHint') : undefined,
    why: {
      ...BARE,
      title: why('override'),
      summary: why('override/sum'),
      inputs: [
        { name: why('in/iron'), value: metal(input.ironMgL, facts) },
        { name: why('in/manganese'), value: metal(input.manganeseMgL, facts) },
      ],
      formula: why('override/how'),
      source: why('practice'),
    },
  }
}

function daysLine(facts: CardFacts): CardLine {
  const { dose, setting, display, card, why } = facts
  return {
    id: 'days',
    label: card('every'),
    value: card('everyDays', { days: Math.round(dose.intervalDays) }),
    hint: card('everyHint'),
    why: {
      title: why('days'),
      summary: why('days/sum'),
      inputs: [...facts.capacityInputs, ...facts.useInputs, { name: why('in/reserve'), value: facts.grains(setting.reserveGr) }],
      formula: why('days/how', {
        capacity: facts.grains(dose.capacityGr),
        reserve: facts.grains(setting.reserveGr),
        daily: facts.grains(setting.dailyGr),
        days: showNumber(dose.days, 1, display) ?? '',
        most: String(setting.mostDays),
      }),
      ...byCapacity(facts),
    },
  }
}

function saltLine(facts: CardFacts): CardLine {
  const { setting, dose, display, card, why, doseBy } = facts
  const eachLb = dose.saltLb / setting.tanks
  const doseText = facts.doseWords(dose.saltLbFt3)
  return {
    id: 'salt',
    label: card(setting.tanks === 2 ? 'saltEach' : 'salt'),
    value: formatWeightLb(Math.round(eachLb * 10) / 10, display),
    hint: card(`dose/${doseBy}`, { dose: doseText }),
    why: {
      title: why('salt'),
      summary: why(`salt/${doseBy}`),
      inputs: [
        { name: why('in/dose'), value: doseText },
        { name: why('in/resin'), value: facts.resinWords },
      ],
      formula: why('salt/how'),
      ...byCapacity(facts),
      missing: facts.priceMissing,
    },
  }
}
