import { newId } from '@almanac/runtime/ids'
import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import type { Prisma } from '../../packages/database/generated/client.ts'
import { addDays, asDate } from './days.ts'
import type { FirmPlan } from './firms.ts'
import type { Random } from './random.ts'
import type { JobPlan } from './rows.ts'

export type Crew = { name: string; colleagueIds: string[]; vehicleId: string }

/** How far back the firm keeps day sheets; older work is known from beds and jobs alone. */
export const SHEETS_BACK_DAYS = 3 * 365
const AHEAD_DAYS = 21
const DAY_START = 8 * 60
const DAY_END = 17 * 60
const FIRST_VISIT = DAY_START + 10

function emptySheets() {
  return {
    crewDay: [] as Prisma.CrewDayCreateManyInput[],
    crewDayMember: [] as Prisma.CrewDayMemberCreateManyInput[],
    visit: [] as Prisma.VisitCreateManyInput[],
    assignment: [] as Prisma.AssignmentCreateManyInput[],
    vehicleUse: [] as Prisma.VehicleUseCreateManyInput[],
  }
}
type Sheet = { id: string; crew: Crew; day: string; nextMinute: number; lastSiteId: string | null }

/** Minutes of driving from a site to another; null is the yard. */
export type DemoDrives = (fromSiteId: string | null, toSiteId: string | null) => number

/** Fills crews' days one visit after another, so that nobody is in two places at once. */
export class SheetBook {
  readonly rows = emptySheets()
  readonly #sheets = new Map<string, Sheet>()
  readonly #companyId: string
  readonly #firm: FirmPlan
  readonly #crews: Crew[]
  readonly #random: Random
  readonly #drives: DemoDrives

  /** `random` is a stream of its own, for how long closed visits took. */
  constructor(companyId: string, firm: FirmPlan, crews: Crew[], random: Random, drives: DemoDrives) {
    this.#companyId = companyId
    this.#firm = firm
    this.#crews = crews
    this.#random = random
    this.#drives = drives
  }

  sheet(crew: Crew, day: string): Sheet {
    const key = `${day} ${crew.name}`
    const known = this.#sheets.get(key)
    if (known) return known
    const sheet = { id: newId(), crew, day, nextMinute: FIRST_VISIT, lastSiteId: null }
    this.#sheets.set(key, sheet)
    const companyId = this.#companyId
    const { timeZone } = this.#firm
    this.rows.crewDay.push({
      companyId,
      id: sheet.id,
      day: asDate(day) as Date,
      name: crew.name,
      vehicleId: crew.vehicleId,
      startsAt: instantIn(timeZone, day, DAY_START),
      endsAt: instantIn(timeZone, day, DAY_END),
    })
    for (const colleagueId of crew.colleagueIds) this.rows.crewDayMember.push({ companyId, id: newId(), crewDayId: sheet.id, colleagueId })
    return sheet
  }

  /** Puts a job on a crew's day if it fits before the day ends; answers the visit's id. */
  place(job: JobPlan, crew: Crew, closed: { outcome: string } | null): string | null {
    const sheet = this.sheet(crew, job.day)
    const first = sheet.nextMinute === FIRST_VISIT
    // What is still to come is booked with its drives, as the app itself would; of what is over the records say no more than the clock.
    const start = closed ? sheet.nextMinute : this.#reached(sheet, job.siteId)
    const end = start + job.minutes
    if (end + (closed ? 0 : this.#drives(job.siteId, null)) > DAY_END) return null
    sheet.nextMinute = end + 25
    sheet.lastSiteId = job.siteId
    const companyId = this.#companyId
    const startsAt = instantIn(this.#firm.timeZone, job.day, start)
    const endsAt = instantIn(this.#firm.timeZone, job.day, end)
    const id = newId()
    this.rows.visit.push({
      companyId,
      id,
      jobId: job.jobId,
      crewDayId: sheet.id,
      startsAt,
      endsAt,
      state: closed ? 'closed' : 'booked',
      outcome: closed?.outcome ?? null,
      closedAt: closed ? endsAt : null,
      ...(closed && first ? { closeOut: this.#tabletTimes(startsAt, job.minutes) } : {}),
    })
    for (const colleagueId of crew.colleagueIds)
      this.rows.assignment.push({ companyId, id: newId(), visitId: id, colleagueId, startsAt, endsAt })
    this.rows.vehicleUse.push({ companyId, id: newId(), visitId: id, vehicleId: crew.vehicleId, startsAt, endsAt })
    return id
  }

  /** When a crew that leaves its last site, or the yard at the beginning of its day, can begin at the next, on the five minutes. */
  #reached({ nextMinute, lastSiteId }: Sheet, siteId: string): number {
    const leaves = lastSiteId === null ? DAY_START : nextMinute - 25
    return Math.max(nextMinute, Math.ceil((leaves + this.#drives(lastSiteId, siteId)) / 5) * 5)
  }

  /** Begin and end as a tablet writes them. Only of a sheet's first visit: the ways between invented visits would say nothing true of how fast crews drive. */
  #tabletTimes(startsAt: Date, minutes: number) {
    const begun = startsAt.getTime() + this.#random.int(-5, 10) * 60_000
    const took = Math.round(minutes * this.#random.between(0.7, 1.25)) * 60_000
    return { startedAt: new Date(begun).toISOString(), finishedAt: new Date(begun + took).toISOString() }
  }

  /** The first crew that can take the job on its day: two people for a rebed. */
  placeAnywhere(job: JobPlan, closed: { outcome: string } | null, turn: number): string | null {
    for (let i = 0; i < this.#crews.length; i++) {
      const crew = this.#crews[(turn + i) % this.#crews.length] as Crew
      if (crew.colleagueIds.length < job.crewSize) continue
      const visitId = this.place(job, crew, closed)
      if (visitId) return visitId
    }
    return null
  }

  /** Empty sheets for the working days ahead, for the dispatcher to fill. */
  openAhead(anchorDay: string): void {
    for (let i = 0; i <= AHEAD_DAYS; i++) {
      const day = addDays(anchorDay, i)
      if (weekdayOf(day) <= 5 || i === 0) for (const crew of this.#crews) this.sheet(crew, day)
    }
  }
}
