import { newId } from '@almanac/runtime/ids'
import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import { addDays, asDate } from './days.ts'
import { drivesBetween } from './drives.ts'
import type { FirmPlan } from './firms.ts'
import { seeded } from './random.ts'
import { addSite, addSupply, emptyRows, type JobPlan, type Rows } from './rows.ts'
import { type Crew, SHEETS_BACK_DAYS, SheetBook } from './sheets.ts'
import { siteStory } from './site-story.ts'
import { stockRows } from './stores.ts'

function crewsOf(companyId: string, firm: FirmPlan, signedIn: Map<string, string>) {
  const colleague: { companyId: string; id: string; personId: string | null; name: string }[] = []
  const vehicle: { companyId: string; id: string; name: string; volumeFt3: number; weightLb: number }[] = []
  const crews: Crew[] = firm.crews.map((crew) => {
    const vehicleId = newId()
    vehicle.push({ companyId, id: vehicleId, ...crew.vehicle })
    const colleagueIds = crew.people.map((name) => {
      const id = newId()
      colleague.push({ companyId, id, personId: signedIn.get(name) ?? null, name })
      return id
    })
    return { name: crew.name, colleagueIds, vehicleId }
  })
  return { colleague, vehicle, crews }
}

/** Work of today and the days ahead: booked visits for every crew, the first crew's day with a rebed among them, and jobs that still need a place. */
function comingWork(rows: Rows, book: SheetBook, crews: Crew[], done: JobPlan[], companyId: string, anchorDay: string): void {
  const [first, ...others] = crews
  if (!first) return
  const recent = done.filter((job) => job.beganBedId === null && job.bedId !== null && job.kind !== 'rebed')
  const open = new Map(rows.bed.filter((bed) => !bed.endedLatest).map((bed) => [bed.id, bed]))
  // One turn a site, the beds longest in service first: they are the ones an owner would have picked.
  const candidates = [...new Map(recent.filter((job) => open.has(job.bedId ?? '')).map((job) => [job.siteId, job])).values()].sort(
    (a, b) =>
      String(open.get(a.bedId ?? '')?.beganLatest?.toString() ?? '') < String(open.get(b.bedId ?? '')?.beganLatest?.toString() ?? '')
        ? -1
        : 1,
  )
  const byAge = candidates.sort(
    (a, b) => Number(open.get(a.bedId ?? '')?.beganLatest ?? 0) - Number(open.get(b.bedId ?? '')?.beganLatest ?? 0),
  )
  const due = byAge.filter((job) => open.get(job.bedId ?? '')?.volumeFt3 != null)
  let next = 30
  const make = (kind: string, minutes: number, crewSize: number, day: string, state: 'booked' | 'proposed') => {
    const source = due[next++]
    if (!source) return null
    const job = { ...source, jobId: newId(), day, kind, minutes, crewSize }
    const window = { dueEarliest: asDate(addDays(anchorDay, -20)), dueLatest: asDate(addDays(anchorDay, 60 + (next % 50))) }
    rows.job.push({
      companyId,
      id: job.jobId,
      siteId: job.siteId,
      softenerId: job.softenerId,
      bedId: job.bedId,
      kind,
      state,
      minutes,
      crewSize,
      ...window,
    })
    return job
  }
  const book1 = (kind: string, minutes: number, crewSize: number, day: string, crew: Crew) => {
    const job = make(kind, minutes, crewSize, day, 'booked')
    if (job && !book.place(job, crew, null))
      rows.job.splice(
        rows.job.findIndex((row) => row.id === job.jobId),
        1,
      )
  }
  book1('rebed', 150, 2, anchorDay, first)
  book1('annual-visit', 45, 1, anchorDay, first)
  book1('cleaning', 60, 1, anchorDay, first)
  others.forEach((crew, i) => {
    book1(
      crew.colleagueIds.length > 1 ? 'rebed' : 'repair',
      crew.colleagueIds.length > 1 ? 160 : 75,
      Math.min(2, crew.colleagueIds.length),
      anchorDay,
      crew,
    )
    book1(i % 2 ? 'repair' : 'annual-visit', 50, 1, anchorDay, crew)
  })
  for (let ahead = 1; ahead <= 8; ahead++) {
    const day = addDays(anchorDay, ahead)
    if (weekdayOf(day) > 5) continue
    for (const crew of crews)
      book1(
        ahead % 3 === 0 && crew.colleagueIds.length > 1 ? 'rebed' : ahead % 2 ? 'annual-visit' : 'cleaning',
        ahead % 3 === 0 ? 150 : 50,
        ahead % 3 === 0 && crew.colleagueIds.length > 1 ? 2 : 1,
        day,
        crew,
      )
  }
  for (let i = 0; i < Math.min(14, Math.floor(rows.site.length / 8)); i++)
    make(
      i % 3 === 0 ? 'rebed' : i % 3 === 1 ? 'annual-visit' : 'repair',
      i % 3 === 0 ? 150 : 60,
      i % 3 === 0 ? 2 : 1,
      anchorDay,
      'proposed',
    )
}

/** All rows of one firm as of a day. The same plan, seed and day give the same facts; only the ids differ, which the clock makes. */
export function planFirm(companyId: string, firm: FirmPlan, seed: number, anchorDay: string, signedIn: Map<string, string>) {
  const random = seeded(seed)
  const rows = emptyRows()
  const supplyIds = new Map(firm.supplies.map((plan) => [plan.name, addSupply(rows, companyId, plan, firm.unitSystem)]))
  const done: JobPlan[] = []
  for (let n = 0; n < firm.sites; n++) {
    const story = siteStory(random, firm, n, anchorDay)
    let supplyId = supplyIds.get(story.supply.name)
    if (!supplyId) {
      supplyId = addSupply(rows, companyId, story.supply, firm.unitSystem)
      supplyIds.set(story.supply.name, supplyId)
    }
    done.push(...addSite(rows, random, companyId, firm.region, supplyId, story, anchorDay))
  }
  const { colleague, vehicle, crews } = crewsOf(companyId, firm, signedIn)
  const book = new SheetBook(companyId, firm, crews, seeded(seed + 1), drivesBetween(rows.site, firm))
  const since = addDays(anchorDay, -SHEETS_BACK_DAYS)
  const bedById = new Map(rows.bed.map((bed) => [bed.id, bed]))
  done
    .filter((job) => job.day >= since)
    .sort((a, b) => (a.day < b.day ? -1 : 1))
    .forEach((job, turn) => {
      const visitId = book.placeAnywhere(job, { outcome: 'done' }, turn)
      const ended = job.endedBedId ? bedById.get(job.endedBedId) : undefined
      const began = job.beganBedId ? bedById.get(job.beganBedId) : undefined
      if (visitId && ended) ended.endedVisitId = visitId
      if (visitId && began) began.beganVisitId = visitId
    })
  book.openAhead(anchorDay)
  comingWork(rows, book, crews, done, companyId, anchorDay)
  const stores = stockRows(companyId, instantIn(firm.timeZone, addDays(anchorDay, -3), 600))
  return { colleague, vehicle, rows, sheets: book.rows, stores }
}

export type PlannedFirm = ReturnType<typeof planFirm>
