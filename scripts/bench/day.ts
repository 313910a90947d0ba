import type { Board } from '@almanac/dispatch/propose/board'
import { startProposal } from '@almanac/dispatch/propose/propose-plan'
import { boardPrices } from '@almanac/operations/jobs/plan-prices'
import { chanceFrom } from './day/chance.ts'
import { bookByHand, driveOf, type Room, type Week, WINDOW } from './day/hand.ts'
import { DAY_FROM, inventWeek } from './day/invent-week.ts'
import { type Lived, liveWeek } from './day/live-week.ts'

/** How the app leaves room: as a dispatcher does, or by how much the day's own lengths vary. */
type AppRoom = Room & { onTime?: boolean }
type Bench = { args: string[]; say: (line: string) => void }

/** The part of a week that stands on its sheets before the rest is planned, half of it promised. Ours, no source. */
const BOOKED = 0.35
const NO_ROOM: Room = { lunch: false, inHand: 0 }
const ROOM: Room = { lunch: true, inHand: 60 }
/** Lunch, and as much room as the day's own visits and drives need to end late one day in ten at most. */
const ON_TIME: AppRoom = { lunch: true, inHand: 0, onTime: true }
const LUNCH = [{ from: 690, to: 780, minutes: 30 }]

function option(args: string[], name: string, usual: string): string {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  return at < 0 ? usual : (args[at]?.split('=')[1] ?? args[at + 1] ?? usual)
}

/** The week as the planner has it: what is booked stands on its sheet, half of it promised; the rest waits. */
function boardOf(board: Board, booked: Week, room: AppRoom): Board {
  const at = new Map([...booked].flatMap(([sheetId, stops]) => stops.map((stop) => [stop.jobId, { ...stop, sheetId }] as const)))
  const isPromised = (jobId: string) => [...at.keys()].indexOf(jobId) % 2 === 0
  return {
    ...board,
    prices: boardPrices({ overtimeMinorPerHour: null, dayFill: room.onTime ? 'one-in-ten' : 'usual' }),
    sheets: board.sheets.map((sheet) => ({
      ...sheet,
      visits: (booked.get(sheet.id) ?? []).map(({ jobId, start }) => ({ jobId, startMinute: start })),
      ...(room.lunch ? { breaks: LUNCH, inHandMinutes: room.inHand } : {}),
    })),
    jobs: board.jobs.map((job) => {
      const stop = at.get(job.id)
      if (!stop) return job
      const promised = { sheetId: stop.sheetId, from: stop.start, to: stop.until }
      // As the app has it: a visit may go elsewhere, but not earlier on its own day.
      const day = board.sheets.find((sheet) => sheet.id === stop.sheetId)?.date ?? ''
      const windows = board.days.map(({ date }) => ({ date, from: date === day ? stop.start : 0, to: 1440 }))
      return isPromised(job.id) ? { ...job, windows, promised } : { ...job, windows }
    }),
  }
}

/** The app's plan of it, as stops with what each customer is told then. */
function planWeek(board: Board, booked: Week, room: AppRoom, seconds: number): { week: Week; left: number } {
  const planning = startProposal(boardOf(board, booked, room), { seed: 1 })
  if ('faults' in planning) throw new Error(planning.faults.join(' '))
  const until = process.cpuUsage().user + seconds * 1e6
  planning.improve(1e6, () => process.cpuUsage().user >= until)
  const { spots } = planning.proposal()
  const untilOf = new Map([...booked.values()].flat().map((stop) => [stop.jobId, stop]))
  const week = new Map(
    board.sheets.map((sheet) => {
      const here = board.jobs.flatMap((job) => {
        const spot = spots.get(job.id)
        if (spot?.sheetId !== sheet.id) return []
        const told = untilOf.get(job.id)
        const until = told && spot.startMinute >= told.start && spot.startMinute <= told.until ? told.until : spot.startMinute + WINDOW
        return [{ jobId: job.id, place: job.place ?? '', minutes: job.minutes, start: spot.startMinute, until }]
      })
      return [sheet.id, here.sort((a, b) => a.start - b.start)] as const
    }),
  )
  return { week, left: board.jobs.length - spots.size }
}

/** How many of those that stood booked have another time or day now. */
function reTimed(before: Week, after: Week): number {
  const now = new Map([...after].flatMap(([sheetId, stops]) => stops.map((stop) => [stop.jobId, `${sheetId} ${stop.start}`] as const)))
  return [...before].flatMap(([sheetId, stops]) => stops.filter((stop) => now.get(stop.jobId) !== `${sheetId} ${stop.start}`)).length
}

function drivenMinutes(board: Board, week: Week): number {
  const drive = driveOf(board)
  let sum = 0
  for (const stops of week.values()) {
    let [place, at] = ['yard', DAY_FROM]
    for (const stop of stops) {
      sum += drive(place, stop.place, at)
      ;[place, at] = [stop.place, stop.start + stop.minutes]
    }
    if (stops.length > 0) sum += drive(place, 'yard', at)
  }
  return sum
}

const add = (a: Lived, b: Lived): Lived => ({
  ...{ days: a.days + b.days, late: a.late + b.late, lateMinutes: a.lateMinutes + b.lateMinutes },
  ...{ visits: a.visits + b.visits, missed: a.missed + b.missed },
})
const NOTHING: Lived = { days: 0, late: 0, lateMinutes: 0, visits: 0, missed: 0 }
const percent = (part: number, whole: number) => Number(((100 * part) / Math.max(1, whole)).toFixed(1))

/**
 * Simulated weeks of a firm: a third of the work is booked, half of that promised; the rest is planned by the app as it plans without room, with lunch and an hour in hand, and so that a day ends late once in ten, and by a
 * dispatcher's hand that puts each job where it adds least driving, with and without the same room. Then the week comes, many times, with lengths and drives drawn about what the app
 * believes, and with twice that spread. A promise is missed when a crew begins later than it told. Seconds are processor time.
 */
export default async function day({ args, say }: Bench) {
  const sizes = option(args, 'crews', '4,8,20').split(',').map(Number)
  const [weeks, replays] = [Number(option(args, 'weeks', '4')), Number(option(args, 'replays', '200'))]
  const [seconds, seed] = [Number(option(args, 'seconds', '8')), Number(option(args, 'seed', '1'))]
  const share = Number(option(args, 'booked', String(BOOKED)))
  const rows: Record<string, unknown>[] = []
  for (const crews of sizes) {
    const found = new Map<
      string,
      { once: Lived; twice: Lived; driven: number; moved: number; left: number; jobs: number; sheets: number }
    >()
    for (let n = 0; n < weeks; n++) {
      const chance = chanceFrom(seed * 1000 + crews * 100 + n)
      const { board, kinds } = inventWeek(crews, chance)
      const empty: Week = new Map()
      const early = board.jobs.filter(() => chance() < share)
      const { week: booked } = bookByHand(board, early, empty, NO_ROOM)
      const standing = new Set([...booked.values()].flat().map((stop) => stop.jobId))
      const waiting = board.jobs.filter((job) => !standing.has(job.id))
      const plans = {
        'app, as today': planWeek(board, booked, NO_ROOM, seconds),
        'app, lunch and an hour': planWeek(board, booked, ROOM, seconds),
        'app, late one day in ten': planWeek(board, booked, ON_TIME, seconds),
        'by hand, as today': bookByHand(board, waiting, booked, NO_ROOM),
        'by hand, lunch and an hour': bookByHand(board, waiting, booked, ROOM),
      }
      for (const [name, { week, left }] of Object.entries(plans)) {
        const all = found.get(name) ?? { once: NOTHING, twice: NOTHING, driven: 0, moved: 0, left: 0, jobs: 0, sheets: 0 }
        for (let m = 0; m < replays; m++) {
          // The same week's chance for every plan.
          all.once = add(all.once, liveWeek(board, kinds, week, chanceFrom(seed + 7919 * m + n), 1))
          all.twice = add(all.twice, liveWeek(board, kinds, week, chanceFrom(seed + 7919 * m + n), 2))
        }
        all.driven += drivenMinutes(board, week)
        all.moved += reTimed(booked, week)
        all.left += left
        all.jobs += board.jobs.length
        all.sheets += [...week.values()].filter((stops) => stops.length > 0).length
        found.set(name, all)
      }
    }
    say(
      `${crews} crews, ${weeks} weeks of about ${Math.round((found.get('app, as today')?.jobs ?? 0) / weeks)} jobs, each lived ${replays} times:`,
    )
    for (const [name, { once, twice, driven, moved, left, sheets }] of found) {
      const row = {
        ...{ crews, name, lateDays: percent(once.late, once.days), missed: percent(once.missed, once.visits) },
        ...{ lateDaysTwice: percent(twice.late, twice.days), missedTwice: percent(twice.missed, twice.visits) },
        ...{
          drivenMinutesAWeek: Math.round(driven / weeks),
          crewDaysAWeek: sheets / weeks,
          reTimedAWeek: moved / weeks,
          leftAWeek: left / weeks,
        },
      }
      rows.push(row)
      say(
        `  ${name.padEnd(28)} days late ${row.lateDays} % (${row.lateDaysTwice} % at twice the spread), promises missed ${row.missed} % (${row.missedTwice} %), ${row.drivenMinutesAWeek} min driven, ${row.crewDaysAWeek} crew-days, ${row.reTimedAWeek} re-timed, ${row.leftAWeek} left`,
      )
    }
  }
  return { weeks, replays, seconds, seed, rows }
}
