import type { Board, BoardJob, Sheet } from '../../../packages/dispatch/propose/board.ts'
import type { TravelTable } from '../../../packages/dispatch/travel/travel-table.ts'

const MINUTES: Record<string, Record<string, number>> = {
  yard: { yard: 0, mill: 10, farm: 20, lake: 30 },
  mill: { yard: 10, mill: 0, farm: 15, lake: 25 },
  farm: { yard: 20, mill: 15, farm: 0, lake: 12 },
  lake: { yard: 30, mill: 25, farm: 12, lake: 0 },
}

/** Four places whose drives are round minutes; a mile a minute. */
function smallTravel(): TravelTable {
  const ids = Object.keys(MINUTES)
  const minutes = ids.flatMap((from) => ids.map((to) => MINUTES[from]?.[to] as number))
  return { ids, seconds: Float64Array.from(minutes, (m) => m * 60), miles: Float64Array.from(minutes), origins: 's'.repeat(minutes.length) }
}

export function job(id: string, place: string | null, changes: Partial<BoardJob> = {}): BoardJob {
  const nothing = { ft3: 0, lb: 0 }
  return { id, label: id, place, minutes: 60, people: 1, skills: [], out: nothing, back: nothing, windows: [], ...changes }
}

export function sheet(id: string, date: string, jobIds: string[], changes: Partial<Sheet> = {}): Sheet {
  return {
    id,
    label: `Crew ${id}`,
    date,
    people: 2,
    skills: [],
    shift: { from: 480, to: 960 },
    latestEnd: 1020,
    breaks: [],
    startPlace: 'yard',
    endPlace: 'yard',
    capacity: { ft3: 20, lb: 1500 },
    visits: jobIds.map((jobId) => ({ jobId })),
    ...changes,
  }
}

/** A board of the given sheets and jobs; an hour's drive of one person costs 60, so a minute's of two costs 2. */
export function board(sheets: readonly Sheet[], jobs: readonly BoardJob[], changes: Partial<Board> = {}): Board {
  const dates = [...new Set(sheets.map((one) => one.date))].sort()
  return {
    days: dates.map((date) => ({ date, minutesInDay: 1440 })),
    sheets,
    jobs,
    locale: 'en-US',
    unitSystem: 'us',
    travel: smallTravel(),
    prices: {
      perDriveHour: 60,
      perMile: 0,
      overtimePerHour: 120,
      perSheet: 0,
      perMove: 50,
      perRetime: 0,
      leaveOut: 10_000,
      takeOff: 50_000,
    },
    ...changes,
  }
}
