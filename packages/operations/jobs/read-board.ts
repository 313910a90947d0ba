import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { type PlanBoardRows, readPlanBoard } from '@almanac/database/read/plan-board'
import type { Load } from '@almanac/dispatch/problem/problem'
import type { Board, BoardDay, Job, Sheet } from '@almanac/dispatch/propose/board'
import type { TravelPlace } from '@almanac/dispatch/travel/travel-table'
import { dayIn } from '@almanac/runtime/clock'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { kitOfRecord } from '@almanac/softener/kit/kit-of-record'
import type { UnitSystem } from '@almanac/units/unit-system'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { boardDays, wallMinute } from './board-times.ts'
import { boardPrices, riskPerDay } from './plan-prices.ts'
import { pointOf } from './travel-desk.ts'

/** A board without its drives, which are worked out outside the transaction. */
export type BoardDraft = { board: Omit<Board, 'travel' | 'rush'>; places: TravelPlace[]; timeZone: string }

/** Where crews start and end. */
export const YARD = 'yard'
/** Overtime that a plan may reckon with, minutes; priced, and shown. */
const MOST_OVERTIME = 120
const END_OF_DAY = 1440
/** Spent resin drips: it weighs about what it weighed new, lb per ft³; typical data sheets, 51 to 53. */
const SPENT_LB_PER_FT3 = 52

/** Sites and crews stand on a stored board by id: names are put in when it is shown, so that a person can be erased. */
export const token = (id: string) => `«${id}»`

type Row = PlanBoardRows['sheets'][number]
type Firm = { figures: FirmFigures; unitSystem: UnitSystem }

function loadOf(kind: string, bed: Row['visits'][number]['bed'], firm: Firm): { out: Load; back: Load } {
  const nothing = { ft3: 0, lb: 0 }
  const kit = kind === 'rebed' && bed ? kitOfRecord(bed, firm) : null
  if (!kit?.ok) return { out: nothing, back: nothing }
  const { loadVolumeFt3, loadWeightLb, spentResinFt3 } = kit.value
  return { out: { ft3: loadVolumeFt3, lb: loadWeightLb }, back: { ft3: spentResinFt3, lb: spentResinFt3 * SPENT_LB_PER_FT3 } }
}

function sheetOf(row: Row, timeZone: string, at: Date): Sheet | null {
  const wall = (instant: string | Date) => wallMinute(timeZone, row.day, new Date(instant))
  const begun = row.visits.filter((visit) => new Date(visit.startsAt) <= at || visit.state === 'closed' || visit.state === 'under-way')
  const last = begun.at(-1)
  const from = Math.max(wall(row.startsAt), last ? wall(last.endsAt) : 0, dayIn(timeZone, at) === row.day ? wall(at) : 0)
  const to = wall(row.endsAt)
  if (from >= to || row.members.length === 0) return null
  return {
    id: row.id,
    label: token(row.id),
    date: row.day,
    people: row.members.length,
    skills: [],
    shift: { from, to },
    latestEnd: to + MOST_OVERTIME,
    breaks: [],
    startPlace: last ? last.siteId : YARD,
    endPlace: YARD,
    capacity: row.vehicle ? { ft3: row.vehicle.volumeFt3, lb: row.vehicle.weightLb } : { ft3: 0, lb: 0 },
    visits: row.visits.filter((visit) => !begun.includes(visit)).map((visit) => ({ jobId: visit.id, startMinute: wall(visit.startsAt) })),
  }
}

/**
 * A visit on a sheet as the planner sees it: fixed where it is only offered, kept within its window where the customer was promised one. Any other may go to
 * another day, but not earlier on its own: somebody knows the time it was booked for, and an earlier one gains nothing.
 */
function visitJob(visit: Row['visits'][number], row: Row, days: readonly BoardDay[], timeZone: string, firm: Firm): Job {
  const wall = (instant: string) => wallMinute(timeZone, row.day, new Date(instant))
  const start = wall(visit.startsAt)
  const promised =
    visit.state !== 'booked'
      ? { sheetId: row.id, from: start, to: start }
      : visit.arriveFrom && visit.arriveUntil
        ? { sheetId: row.id, from: wall(visit.arriveFrom), to: wall(visit.arriveUntil) }
        : undefined
  return {
    ...{ id: visit.id, label: token(visit.siteId), place: visit.siteId, people: visit.crewSize, skills: [] },
    windows: days.map(({ date }) => ({ date, from: date === row.day ? start : 0, to: END_OF_DAY })),
    minutes: (Date.parse(visit.endsAt) - Date.parse(visit.startsAt)) / 60_000,
    ...loadOf(visit.kind, visit.bed, firm),
    ...(promised ? { promised } : {}),
  }
}

function waitingJob(job: PlanBoardRows['waiting'][number], rows: PlanBoardRows, firm: Firm): Job {
  const due = dayOf(job.dueLatest)
  const earliest = dayOf(job.dueEarliest)
  return {
    ...{ id: job.id, label: token(job.siteId), place: job.siteId, minutes: job.minutes, people: job.crewSize, skills: [], windows: [] },
    ...loadOf(job.kind, job.bed, firm),
    ...(earliest ? { earliest } : {}),
    ...(due ? { due, riskPerDay: riskPerDay(job.chance3Months, rows.settings) } : {}),
  }
}

/** Reads the sheets of some days and the waiting jobs as a board. What is past or under way on a day that has begun is left out of it. */
export async function readBoard(
  tx: Tx,
  companyId: string,
  days: { fromDay: string; untilDay: string; at: Date },
  onlyJobId?: string,
): Promise<BoardDraft & { rows: PlanBoardRows }> {
  const { fromDay, untilDay, at } = days
  const rows = await readPlanBoard(tx, companyId, days, onlyJobId)
  const { timeZone } = rows
  const firm = { figures: await firmFigures(tx, companyId), unitSystem: (await companyFacts(tx, companyId)).unitSystem }
  const span = boardDays(timeZone, fromDay, untilDay)
  const kept = rows.sheets.flatMap((row) => {
    const sheet = sheetOf(row, timeZone, at)
    return sheet ? [{ row, sheet }] : []
  })
  const placed = kept.flatMap(({ row, sheet }) => {
    const on = new Set(sheet.visits.map((one) => one.jobId))
    return row.visits.filter((visit) => on.has(visit.id)).map((visit) => visitJob(visit, row, span, timeZone, firm))
  })
  const waiting = rows.waiting.filter((job) => (dayOf(job.dueEarliest) ?? '') <= untilDay).map((job) => waitingJob(job, rows, firm))
  const coordinates = new Map(
    [...rows.sheets.flatMap((row) => row.visits), ...rows.waiting].map((one) => [one.siteId, placeOfSite(one.coordinates, timeZone)]),
  )
  const yard = pointOf({ latitude: rows.settings.yardLatitude, longitude: rows.settings.yardLongitude })
  const places = [{ id: YARD, at: yard }, ...[...coordinates].map(([id, place]) => ({ id, at: place && pointOf(place) }))]
  const board = {
    days: span,
    sheets: kept.map((one) => one.sheet),
    jobs: [...placed, ...waiting],
    prices: boardPrices(rows.settings),
  }
  return { board, places, timeZone, rows }
}
