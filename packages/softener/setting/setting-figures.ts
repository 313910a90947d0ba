import type { Arrangement } from '@almanac/records/arrangement'
import type { ResinKindId } from '@almanac/records/resin-kind'
import type { Refusal } from '@almanac/units/result'
import { refuse } from '@almanac/units/result'
import type { FirmFigures, Reserve } from '../firm/firm-figures.ts'
import type { Salt } from '../water/capacity.ts'
import { ageFactor, dissolvedSolidsFactor, leakageMgL, temperatureFactor } from '../water/capacity-effects.ts'
import { refillWaterGal, sodiumAddedMgL } from '../water/regeneration.ts'
import type { CardSpeaking } from './card-types.ts'
import { chooseDose, type DoseChoice } from './choose-dose.ts'
import type { DoseFigures, DoseSetting } from './dose-figures.ts'
import { doseGrid } from './dose-grid.ts'
import { MOST_LEAKAGE_MG_L } from './efficiency-limits.ts'
import { fixedRegenerationGal, type StepMinutes, stepMinutes } from './regeneration-steps.ts'
import { type WaterUse, waterUse } from './water-use.ts'

/** Longest interval between regenerations: 14 days, 4 where iron or manganese would settle in the bed (practice says 3 to 4; no source). */
const MOST_DAYS = 14
const MOST_DAYS_WITH_METALS = 4
/** Salt that carries iron out again, as lb NaCl/ft³: 8 to 10 in practice, never the least that softens (no source). */
const LEAST_DOSE_WITH_METALS = 8
/** From here metals count, mg/L together: the limit for public works (Virginia 12 VAC 5-590-900). */
const METALS_FROM_MG_L = 0.3
/** Age taken where the bed's beginning is not known, years: about half of the average life of 8 to 10 (UFC 3-240-13FN §2-2.5.1.4). */
export const ASSUMED_AGE_YEARS = 5

/** Below this there is nothing to soften, gpg: less than a drop of any test kit shows. */
const LEAST_HARDNESS_GPG = 0.1

export type SettingQuestion = {
  kind: ResinKindId
  resinFt3: number
  arrangement: Arrangement
  ageYears: number | null
  temperatureF: number
  hardnessGpg: number
  /** Hardness to set for, metals allowed for. */
  compensatedGpg: number
  metalsMgL: number
  dissolvedSolidsMgL: number | null
  people: number | null
  measuredGalDay: number | null
  backwashGpm: number
  byTimer: boolean
  refillGpm: number | null
  salt: Salt
  mostLeakageMgL: number | null
  /** A dose to set instead of the best, lb of the salt per ft³: the nearest of those compared is taken. */
  wantedLbFt3: number | null
}

export type SettingFigures = DoseChoice & {
  /** The dose to set: the wanted one, else the best. */
  chosen: number
  use: WaterUse
  dailyGr: number
  ageYears: number
  /** Shares of a new bed's capacity at 60 °F, and their product. */
  ageShare: number
  temperatureShare: number
  solidsShare: number
  capacityShare: number
  reserve: Reserve
  reserveGr: number
  mostDays: number
  /** Gallons between regenerations by the meter. */
  gallonsBetween: number
  refillGal: number
  minutes: StepMinutes
  sodiumMgL: number
  /** Tanks that regenerate together. */
  tanks: 1 | 2
}

/** How the softener should be set, and what every dose would cost. Numbers checked before; refuses water without hardness. */
export function settingFigures(
  question: SettingQuestion,
  figures: FirmFigures,
  { card }: Pick<CardSpeaking, 'card'>,
): SettingFigures | Refusal {
  const { kind, resinFt3, arrangement, salt, compensatedGpg } = question
  if (!(compensatedGpg >= LEAST_HARDNESS_GPG)) return refuse(card('softAlready'))
  const use = waterUse(question.measuredGalDay, question.people)
  const dailyGr = use.gallonsPerDay * compensatedGpg
  const ageYears = question.ageYears ?? ASSUMED_AGE_YEARS
  const ageShare = ageFactor(ageYears)
  const temperatureShare = temperatureFactor(question.temperatureF)
  const solidsShare = dissolvedSolidsFactor(question.dissolvedSolidsMgL ?? 0)
  const capacityShare = ageShare * temperatureShare * solidsShare
  if (!(capacityShare > 0)) return refuse(card('spent'))
  // The other tank is ready when one of two in turn is spent, so that nothing need be kept back.
  const reserve: Reserve = arrangement === 'twin-alternating' ? NO_RESERVE : figures.reserve
  const tanks = arrangement === 'twin-parallel' ? 2 : 1
  const metals = question.metalsMgL >= METALS_FROM_MG_L
  const mostDays = metals ? MOST_DAYS_WITH_METALS : MOST_DAYS
  const at: DoseSetting = {
    salt,
    resinFt3,
    tanks,
    capacityShare,
    dailyGr,
    reserve,
    byTimer: question.byTimer,
    mostDays,
    solidsFactor: (leakageMgL(1, question.dissolvedSolidsMgL) ?? 1) / (leakageMgL(1, null) ?? 1),
    mostLeakageMgL: question.mostLeakageMgL ?? MOST_LEAKAGE_MG_L,
    leastAsNaClLbFt3: metals ? LEAST_DOSE_WITH_METALS : 0,
    fixedGal: fixedRegenerationGal(question.backwashGpm, resinFt3, metals),
    saltPriceMinorPerLb: figures.saltPriceMinorPerLb,
    waterPriceMinorPerGal: figures.waterPriceMinorPerGal,
  }
  const choice = chooseDose(doseGrid(figures.curves, kind, salt), at)
  const chosen = question.wantedLbFt3 === null ? choice.best : nearestDose(choice.doses, question.wantedLbFt3)
  const dose = choice.doses[chosen] as DoseFigures
  const refillGal = refillWaterGal(dose.saltLb / tanks, salt)
  return {
    ...choice,
    chosen,
    use,
    dailyGr,
    ageYears,
    ageShare,
    temperatureShare,
    solidsShare,
    capacityShare,
    reserve,
    reserveGr: dose.capacityGr - dose.usableGr,
    mostDays,
    gallonsBetween: dose.usableGr / compensatedGpg,
    refillGal,
    minutes: stepMinutes(dose.saltLb / tanks, resinFt3, refillGal, question.refillGpm, metals),
    sodiumMgL: sodiumAddedMgL(question.hardnessGpg, salt),
    tanks,
  }
}

const NO_RESERVE: Reserve = { kind: 'days', days: 0 }

function nearestDose(doses: readonly DoseFigures[], saltLbFt3: number): number {
  let best = 0
  for (let index = 1; index < doses.length; index += 1) {
    const miss = Math.abs((doses[index]?.saltLbFt3 ?? 0) - saltLbFt3)
    if (miss < Math.abs((doses[best]?.saltLbFt3 ?? 0) - saltLbFt3)) best = index
  }
  return best
}
