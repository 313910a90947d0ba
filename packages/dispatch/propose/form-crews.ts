import { seededRandom } from '../search/random.ts'
import type { Board, Sheet, WallSpan } from './board.ts'
import { allDivisions, changed, type Division, firstDivision, keyOf } from './divide-hands.ts'
import { type Proposal, startProposal } from './propose-plan.ts'

/** Somebody who works that day and is on no sheet yet. */
export interface Hand {
  readonly id: string
  readonly shift: WallSpan
  readonly breaks: Sheet['breaks']
  /** Id of `Board.travel` where they start from home; null for the yard. */
  readonly home: string | null
  readonly overtimePerHour: number | null
}

export interface Van {
  readonly id: string
  readonly capacity: Sheet['capacity']
}

/** A day whose crews are to be formed. The board has the sheets that stand already, whose people and vehicles are not among these. */
export interface CrewDayToForm {
  readonly board: Board
  readonly date: string
  /** Id of `Board.travel`. */
  readonly yard: string
  readonly hands: readonly Hand[]
  readonly vans: readonly Van[]
  /** What one or two of them can do, in the jobs' words, by their ids in order with a space between. */
  readonly skills: Readonly<Record<string, readonly string[]>>
  readonly inHandMinutes: number
  /** Overtime that a plan may reckon with. */
  readonly overtimeMinutes: number
}

export interface FormedCrew {
  readonly handIds: readonly string[]
  readonly vanId: string
  readonly shift: WallSpan
  /** What they could do that day: the plan that was made with them. */
  readonly jobIds: readonly string[]
}

export interface Formed {
  readonly crews: readonly FormedCrew[]
  readonly spareIds: readonly string[]
  /** The day with these crews, and with everyone alone. */
  readonly after: Proposal['after']
  readonly alone: Proposal['after']
  /** How many ways to divide them were looked at. */
  readonly tried: number
}

const QUICK = 40
const THOROUGH = 600
/** So many of the best are looked at again more thoroughly. */
const FINALISTS = 5
/** Small changes that gain nothing before the search begins anew elsewhere. */
const PATIENCE = 60

/** Two ids as they stand in `skills`. */
export const skillKey = (ids: readonly string[]): string => [...ids].sort().join(' ')

function sheetsFor(day: CrewDayToForm, division: Division): Sheet[] {
  // Two carry what one does not: they get the larger vehicles.
  const vans = [...day.vans].sort((a, b) => b.capacity.lb - a.capacity.lb)
  const crews = [...division].sort((a, b) => b.length - a.length)
  return crews.flatMap((crew, i): Sheet[] => {
    const hands = crew.map((one) => day.hands[one] as Hand)
    const from = Math.max(...hands.map((one) => one.shift.from))
    const to = Math.min(...hands.map((one) => one.shift.to))
    const van = vans[i]
    if (!van || from >= to) return []
    const overtime = hands.flatMap((one) => one.overtimePerHour ?? [])
    const place = hands.find((one) => one.home !== null)?.home ?? day.yard
    const ids = hands.map((one) => one.id)
    const breaks = new Map(hands.flatMap((one) => one.breaks).map((one) => [`${one.from} ${one.to} ${one.minutes}`, one]))
    return [
      {
        ...{ id: `${van.id}|${skillKey(ids)}`, label: skillKey(ids), date: day.date, people: hands.length },
        ...{ skills: day.skills[skillKey(ids)] ?? [], shift: { from, to }, latestEnd: to + day.overtimeMinutes },
        ...(day.inHandMinutes > 0 ? { inHandMinutes: day.inHandMinutes } : {}),
        breaks: [...breaks.values()].filter((one) => one.to > from && one.from + one.minutes <= to),
        ...{ startPlace: place, endPlace: place, capacity: van.capacity },
        ...(overtime.length === hands.length ? { overtimePerHour: overtime.reduce((a, b) => a + b, 0) / overtime.length } : {}),
        visits: [],
      },
    ]
  })
}

/**
 * Who goes with whom: divides people into crews of one or two with a vehicle each, so that what the crews can do that day, as the planner plans it, costs least:
 * jobs left waiting, driving, overtime and lateness by the firm's own prices. Ways are compared by the same planner with the same seed; where there are few enough each
 * is tried, else small changes from the best so far, begun anew when they gain nothing. The same day, seed and numbers give the same crews.
 */
export function formCrews(
  day: CrewDayToForm,
  how: { seed: number; most: number; shouldStop?: () => boolean },
): Formed | { faults: string[] } {
  const { hands, vans } = day
  const most = Math.min(vans.length, hands.length)
  const seen = new Map<string, { division: Division; price: number }>()
  let faults: string[] = []
  const plan = (division: Division, iterations: number): Proposal | null => {
    const planning = startProposal({ ...day.board, sheets: [...day.board.sheets, ...sheetsFor(day, division)] }, { seed: how.seed })
    if ('faults' in planning) {
      faults = planning.faults
      return null
    }
    planning.improve(iterations)
    return planning.proposal()
  }
  const priceOf = (division: Division): number => {
    const key = keyOf(division)
    const known = seen.get(key)
    if (known) return known.price
    const price = plan(division, QUICK)?.after.price.total ?? Number.POSITIVE_INFINITY
    seen.set(key, { division, price })
    return price
  }
  const over = () => seen.size >= how.most || how.shouldStop?.() === true
  const first = firstDivision(hands.length, most)
  priceOf(first)
  if (faults.length > 0) return { faults }
  const all = allDivisions(hands.length, most)
  if (all) for (const one of all.slice(0, how.most)) if (!over()) priceOf(one)
  if (!all) climb()

  function climb(): void {
    const random = seededRandom(how.seed)
    let best = first
    let idle = 0
    let turns = 0
    while (!over() && turns++ < how.most * 20) {
      const next = changed(best, hands.length, most, random)
      if (priceOf(next) < priceOf(best)) {
        best = next
        idle = 0
      } else if (++idle > PATIENCE) {
        for (let i = 0; i < hands.length; i++) best = changed(best, hands.length, most, random)
        idle = 0
      }
    }
  }

  const finalists = [...seen.values()].sort((a, b) => a.price - b.price).slice(0, FINALISTS)
  const judged = finalists.flatMap(({ division }) => {
    const proposal = plan(division, THOROUGH)
    return proposal ? [{ division, proposal }] : []
  })
  const [best] = judged.sort((a, b) => a.proposal.after.price.total - b.proposal.after.price.total)
  const alone = plan(
    [...Array(most).keys()].map((one) => [one]),
    THOROUGH,
  )
  if (!best || !alone) return { faults }
  const formed = sheetsFor(day, best.division)
  const crews = formed.map((sheet): FormedCrew => {
    const [vanId = '', ids = ''] = sheet.id.split('|')
    const jobIds = [...best.proposal.spots]
      .filter(([, spot]) => spot.sheetId === sheet.id)
      .sort((a, b) => a[1].position - b[1].position)
      .map(([jobId]) => jobId)
    return { handIds: ids.split(' '), vanId, shift: sheet.shift, jobIds }
  })
  const on = new Set(crews.flatMap((crew) => crew.handIds))
  return {
    crews,
    spareIds: hands.map((one) => one.id).filter((id) => !on.has(id)),
    after: best.proposal.after,
    alone: alone.after,
    tried: seen.size,
  }
}
