import type { EndCause } from '@almanac/records/end-cause'
import type { JobKind } from '@almanac/records/job-kind'
import { type JobState, openJobStates } from '@almanac/records/job-state'
import type { RecordedResinKind } from '@almanac/records/resin-kind'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'

/** What a bed's line needs beside the bed. */
export const BED_LINE = {
  forecast: { select: { due10Day: true, due50Day: true, due90Day: true, chance12Months: true } },
} satisfies Prisma.BedInclude
type BedWithForecast = Prisma.BedGetPayload<{ include: typeof BED_LINE }>

/** A bed as lists show it. An ended bed has no due days, even while its forecast has not been cleared yet. */
export function bedLine(bed: BedWithForecast) {
  const forecast = bed.endedLatest === null ? bed.forecast : null
  return {
    id: bed.id,
    resinKind: bed.resinKind as RecordedResinKind,
    volumeFt3: bed.volumeFt3,
    beganEarliest: dayOf(bed.beganEarliest),
    beganLatest: dayOf(bed.beganLatest),
    beganAsWritten: bed.beganAsWritten,
    lastSeenDay: dayOf(bed.lastSeenDay),
    endedEarliest: dayOf(bed.endedEarliest),
    endedLatest: dayOf(bed.endedLatest),
    endCause: bed.endCause as EndCause | null,
    due10Day: dayOf(forecast?.due10Day ?? null),
    due50Day: dayOf(forecast?.due50Day ?? null),
    due90Day: dayOf(forecast?.due90Day ?? null),
    chance12Months: forecast?.chance12Months ?? null,
  }
}

type TankRow = {
  id: string
  version: number
  position: number
  diameterIn: number | null
  heightIn: number | null
  nominalGrains: number | null
  sizeAsWritten: string | null
}

export function tankLine({ id, version, position, diameterIn, heightIn, nominalGrains, sizeAsWritten }: TankRow) {
  return { id, version, position, diameterIn, heightIn, nominalGrains, sizeAsWritten }
}

/** A tank's size in the fewest words: "10×54", or as it was written. */
export function tankWords(tank: Pick<TankRow, 'diameterIn' | 'heightIn' | 'sizeAsWritten' | 'position'>): string {
  if (tank.diameterIn !== null && tank.heightIn !== null) return `${tank.diameterIn}×${tank.heightIn}`
  return tank.sizeAsWritten ?? `tank ${tank.position}`
}

/** Jobs still to be done, with the visit that stands on a day sheet. */
export const OPEN_JOBS = {
  where: { state: { in: [...openJobStates] } },
  orderBy: [{ dueLatest: { sort: 'asc', nulls: 'last' } }, { id: 'asc' }],
  include: {
    visits: {
      where: { state: { in: ['booked', 'under-way'] } },
      orderBy: { startsAt: 'asc' },
      take: 1,
      select: { crewDay: { select: { day: true } } },
    },
  },
} satisfies Prisma.Site$jobsArgs

type OpenJob = Prisma.JobGetPayload<{ include: typeof OPEN_JOBS.include }>

export function jobLine(job: OpenJob) {
  return {
    id: job.id,
    kind: job.kind as JobKind,
    state: job.state as JobState,
    dueEarliest: dayOf(job.dueEarliest),
    dueLatest: dayOf(job.dueLatest),
    visitDay: dayOf(job.visits[0]?.crewDay.day ?? null),
  }
}

/** Dates as text compare by calendar; unknown ones go last. */
export function byDay(a: string | null, b: string | null): number {
  if (a === b) return 0
  if (a === null) return 1
  if (b === null) return -1
  return a < b ? -1 : 1
}
