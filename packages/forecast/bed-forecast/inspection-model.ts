import normalCdf from '@stdlib/stats-base-dists-normal-logcdf'
import { type Saying, sayingOf } from '../exposure/speaking.ts'
import type { Inspection } from './bed-forecast-types.ts'

/**
 * What an inspection says of a bed: each reading against the share x of its life that is worn, 0 new, 1 failed. A reading is start + rise · x with doubt about
 * both, shared by all readings of one bed, and noise of its own; kinds are taken as independent at a given x. docs/decisions/inspections-by-bayes.md says why.
 */
export interface ReadingModel {
  readonly start: number
  readonly startSd: number
  readonly rise: number
  readonly riseSd: number
  readonly noiseSd: number
  readonly source: string
}

export const READING_MODELS: Readonly<Record<'capacity' | 'moisture' | 'pressure', ReadingModel>> = {
  capacity: {
    start: 1,
    startSd: 0.03,
    rise: -0.25,
    riseSd: 0.07,
    noiseSd: 0.06,
    source:
      'A bed is replaced when its capacity has fallen by 25% (UFC 3-240-13FN, 2005, §2-2.5.1.4), so that this is where life ends. Noise of a run measured by meter and hardness kit: common practice, no source.',
  },
  moisture: {
    start: 0.46,
    startSd: 0.01,
    rise: 0.12,
    riseSd: 0.04,
    noiseSd: 0.02,
    source: 'New gel resin holds 44 to 48% water, above 55% it is degraded, above 60% to be replaced. From memory.',
  },
  pressure: {
    start: Math.log(5),
    startSd: 0.5,
    rise: Math.LN2,
    riseSd: 0.4,
    noiseSd: 0.25,
    source:
      'The logarithm of the pressure drop: about 5 psi over a sound bed at service flow, twice that over one that has softened and broken. One reading says little, two of the same bed more. Common practice, no source.',
  },
}

/** Wear at which grades of bead pass into one another, and how unevenly hands judge them. Common practice, no source. */
const GRADE = { softFrom: 0.7, mushyFrom: 1.1, sd: 0.2, slip: 0.02 } as const

/** Readings of one bed that can be used, by kind, with the place of their day in `days`. */
export interface Readings {
  readonly days: readonly number[]
  readonly byKind: readonly { readonly model: ReadingModel; readonly at: readonly number[]; readonly values: readonly number[] }[]
  readonly grades: readonly { readonly at: number; readonly grade: 'firm' | 'some-soft' | 'mushy' }[]
  readonly words: readonly string[]
}

/** Null where no inspection says anything. `dayOf` gives the day number, null for none that counts. */
export function readInspections(
  list: readonly Inspection[],
  dayOf: (day: Inspection['day']) => number | null,
  saying: Saying = sayingOf(undefined),
): Readings | null {
  const days: number[] = []
  const kinds = (['capacity', 'moisture', 'pressure'] as const).map((kind) => ({
    kind,
    model: READING_MODELS[kind],
    at: [] as number[],
    values: [] as number[],
  }))
  const grades: { at: number; grade: 'firm' | 'some-soft' | 'mushy' }[] = []
  const words: string[] = []
  for (const one of list) {
    const day = dayOf(one.day)
    if (day === null) continue
    const at = days.length
    const readings = [
      usable(one.capacityShare, 0.05, 1.5),
      usable(one.moistureShare, 0.3, 0.9),
      logged(usable(one.pressureDropPsi, 0.1, 100)),
    ]
    const seen = one.beadCondition
    const found = seen === 'firm' || seen === 'some-soft' || seen === 'mushy' || seen === 'broken' ? seen : null
    const grade = found === 'broken' ? 'mushy' : found
    if (grade === null && readings.every((value) => value === null)) continue
    days.push(day)
    kinds.forEach(({ at: places, values }, k) => {
      const value = readings[k] ?? null
      if (value === null) return
      places.push(at)
      values.push(value)
    })
    if (grade !== null) grades.push({ at, grade })
    words.push(wordsOf(one, found, saying))
  }
  return days.length === 0 ? null : { days, byKind: kinds.filter(({ values }) => values.length > 0), grades, words }
}

type Grade = 'firm' | 'some-soft' | 'mushy' | 'broken'

function wordsOf(one: Inspection, grade: Grade | null, { say, share, fixed }: Saying): string {
  const parts = [
    usable(one.capacityShare, 0.05, 1.5) === null ? '' : say('found/capacity', { share: share(one.capacityShare ?? 0) }),
    usable(one.moistureShare, 0.3, 0.9) === null ? '' : say('found/moisture', { share: share(one.moistureShare ?? 0) }),
    usable(one.pressureDropPsi, 0.1, 100) === null ? '' : say('found/drop', { psi: fixed(one.pressureDropPsi ?? 0, 0) }),
    grade === null ? '' : say(`found/${grade}`),
  ]
  return say('found', { what: parts.filter((part) => part !== '').join(', '), year: (one.day ?? '').slice(0, 4) })
}

function usable(value: number | null | undefined, least: number, most: number): number | null {
  return value !== null && value !== undefined && value >= least && value <= most ? value : null
}

const logged = (value: number | null) => (value === null ? null : Math.log(value))

/** ln likelihood of the readings where wear on `days` was `worn` of a life; worn[i] may pass 1 for a bed that had failed. */
export function readingsLogLikelihood(readings: Readings, worn: ArrayLike<number>): number {
  let sum = 0
  for (const { model, at, values } of readings.byKind) sum += linearLog(model, at, values, worn)
  for (const { at, grade } of readings.grades) sum += gradeLog(grade, worn[at] as number)
  return sum
}

/** Normal readings on a line whose start and rise are themselves normal: integrated out in closed form. */
function linearLog(model: ReadingModel, at: readonly number[], values: readonly number[], worn: ArrayLike<number>): number {
  const noise = 1 / model.noiseSd ** 2
  // Precision of (start, rise) after the readings, and what they pull it by.
  let [p00, p01, p11, b0, b1, squares] = [1 / model.startSd ** 2, 0, 1 / model.riseSd ** 2, 0, 0, 0]
  for (let i = 0; i < values.length; i++) {
    const x = Math.min(worn[at[i] as number] as number, 1.6)
    const rest = (values[i] as number) - model.start - model.rise * x
    p00 += noise
    p01 += noise * x
    p11 += noise * x * x
    b0 += noise * rest
    b1 += noise * rest * x
    squares += noise * rest * rest
  }
  const determinant = p00 * p11 - p01 * p01
  const explained = (p11 * b0 * b0 - 2 * p01 * b0 * b1 + p00 * b1 * b1) / determinant
  return -0.5 * (squares - explained) - 0.5 * Math.log(determinant)
}

function gradeLog(grade: 'firm' | 'some-soft' | 'mushy', x: number): number {
  const firm = Math.exp(normalCdf((GRADE.softFrom - x) / GRADE.sd, 0, 1))
  const notMushy = Math.exp(normalCdf((GRADE.mushyFrom - x) / GRADE.sd, 0, 1))
  const chance = grade === 'firm' ? firm : grade === 'some-soft' ? notMushy - firm : 1 - notMushy
  return Math.log(GRADE.slip + (1 - 3 * GRADE.slip) * chance)
}
