import type { JobKind } from '@almanac/records/job-kind'
import { freeGaps, type Stretch } from './free-gaps.ts'

/** What a job asks of a day sheet. */
export interface JobToPlace {
  kind: JobKind
  minutes: number
  crewSize: number
  /** Null or left out: as its kind usually does. */
  needsVehicle?: boolean | null
}

/** What a day sheet offers. */
export interface SheetToPlaceOn {
  people: number
  hasVehicle: boolean
  hours: Stretch
  taken: readonly Stretch[]
}

export type Place = Stretch & { gapEndMs: number }
export type PlaceAnswer = { fits: true; places: Place[] } | { fits: false; reason: string }

const MINUTE_MS = 60_000
/** Visits begin on the five minutes: nobody is told to come at 10:23. */
const STEP_MS = 5 * MINUTE_MS

/** Kinds that bring or take away material, so that a crew on foot cannot do them. */
const NEEDS_VEHICLE: readonly JobKind[] = ['rebed', 'installation', 'exchange', 'delivery', 'warranty-return']

/** Whether a job needs a vehicle: as somebody said of it, else as its kind does. */
const needsVehicle = ({ kind, needsVehicle: said }: Pick<JobToPlace, 'kind' | 'needsVehicle'>): boolean =>
  said ?? NEEDS_VEHICLE.includes(kind)

const count = (people: number) => (people === 1 ? 'one person' : `${people} people`)

/** Why a sheet's crew cannot do the job at any time of the day, in a sentence; null when it can. */
export function crewLacks(job: JobToPlace, sheet: Pick<SheetToPlaceOn, 'people' | 'hasVehicle'>): string | null {
  if (sheet.people === 0) return 'Nobody is on this sheet yet.'
  if (sheet.people < job.crewSize) return `Needs ${count(job.crewSize)}; this sheet has ${count(sheet.people)}.`
  if (!sheet.hasVehicle && needsVehicle(job)) return 'Needs a vehicle for the material; this sheet has none.'
  return null
}

/**
 * The places of one job on one sheet: the start of each free stretch that is long enough, none before `notBeforeMs`. Driving is not counted
 * yet. Says why when there is none.
 */
export function placesOnSheet(job: JobToPlace, sheet: SheetToPlaceOn, notBeforeMs: number): PlaceAnswer {
  const lacks = crewLacks(job, sheet)
  if (lacks) return { fits: false, reason: lacks }
  const places: Place[] = []
  let longest = 0
  for (const gap of freeGaps(sheet.hours, sheet.taken)) {
    const startMs = Math.ceil(Math.max(gap.startMs, notBeforeMs) / STEP_MS) * STEP_MS
    const endMs = startMs + job.minutes * MINUTE_MS
    longest = Math.max(longest, gap.endMs - startMs)
    if (endMs <= gap.endMs) places.push({ startMs, endMs, gapEndMs: gap.endMs })
  }
  if (places.length > 0) return { fits: true, places }
  if (longest <= 0) return { fits: false, reason: 'Full: this sheet has no time left.' }
  const minutes = Math.floor(longest / MINUTE_MS)
  return { fits: false, reason: `Needs ${job.minutes} min; the longest free time is ${minutes} min.` }
}
