import type { Board, BoardDay, BoardJob, Sheet } from '../../../packages/dispatch/propose/board.ts'
import { seededRandom } from '../../../packages/dispatch/search/random.ts'
import { UNCALIBRATED } from '../../../packages/dispatch/travel/estimate-leg.ts'
import { travelTable } from '../../../packages/dispatch/travel/travel-table.ts'

/** A firm's board from a seed: so many crews on so many days, a few jobs on each sheet (as many as fit is not looked at), others waiting. All names are invented. */
export function inventedBoard(seed: number, size: { crews: number; days: number; perSheet: number; waiting: number }): Board {
  const random = seededRandom(seed)
  const days = Array.from(
    { length: size.days },
    (_, d): BoardDay => ({ date: `2026-03-${String(2 + d).padStart(2, '0')}`, minutesInDay: 1440 }),
  )
  const places = [{ id: 'yard', at: { lat: 41.6, lon: -93.6 } }]
  const jobs: BoardJob[] = []
  const addJob = (placed: boolean): string => {
    const id = `job-${jobs.length}`
    places.push({ id, at: { lat: 41.4 + random.below(400) / 1000, lon: -93.8 + random.below(400) / 1000 } })
    const big = random.below(3) === 0
    const ft3 = big ? 2 + random.below(3) : 1
    const day = days[random.below(days.length)]?.date as string
    const from = 480 + 60 * random.below(4)
    jobs.push({
      id,
      label: `Customer ${jobs.length}`,
      place: id,
      minutes: big ? 120 : 45,
      people: big ? 2 : 1,
      skills: random.below(5) === 0 ? ['old valves'] : [],
      out: { ft3, lb: ft3 * 52 },
      back: { ft3, lb: ft3 * 60 },
      windows: !placed && random.below(3) === 0 ? days.map(({ date }) => ({ date, from, to: from + 240 })) : [],
      due: day,
      riskPerDay: 200 + random.below(2000),
    })
    return id
  }
  const sheets = days.flatMap(({ date }) =>
    Array.from({ length: size.crews }, (_, c): Sheet => {
      const people = c % 4 === 3 ? 1 : 2
      const visits = Array.from({ length: size.perSheet }, () => addJob(true))
      const doable = visits.filter((id) => {
        const job = jobs.find((one) => one.id === id) as BoardJob
        return job.people <= people && (job.skills.length === 0 || c % 2 === 0)
      })
      return {
        id: `${date}/${c}`,
        label: `Crew ${c + 1}`,
        date,
        people,
        skills: c % 2 === 0 ? ['old valves'] : [],
        shift: { from: 480, to: 990 },
        latestEnd: 1140,
        breaks: [{ from: 690, to: 780, minutes: 30 }],
        startPlace: 'yard',
        endPlace: 'yard',
        capacity: { ft3: 30, lb: 2200 },
        visits: doable.map((jobId) => ({ jobId })),
      }
    }),
  )
  for (let i = 0; i < size.waiting; i++) addJob(false)
  return {
    days,
    sheets,
    jobs,
    locale: 'en-US',
    unitSystem: 'us',
    travel: travelTable(places, { calibration: UNCALIBRATED }),
    prices: {
      perDriveHour: 3500,
      perMile: 70,
      overtimePerHour: 5000,
      perSheet: 0,
      perMove: 3000,
      perRetime: 0,
      leaveOut: 60_000,
      takeOff: 200_000,
    },
  }
}
