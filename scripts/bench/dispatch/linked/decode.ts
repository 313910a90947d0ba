import { copyDraft, type Decoder, type LinkedDraft, lateAt, openAt, sameFrom, standsAsKept } from './draft.ts'
import type { LinkedModel } from './linked-model.ts'

/**
 * Earliest times of a draft whose tokens before position `changed` are those of the last kept draft; fills `draft.start` and answers its total price, Infinity
 * when it does not fit or costs more than `bound`. All prices rise with time, so the earliest times are the best. A second part that begins too late after the first
 * pushes the first's beginning up (`floor`) and the timing is done again; each pass settles at least one such pair, so one pass more than there are pairs shows a
 * plan that can never fit.
 */
export function decode(d: Decoder, draft: LinkedDraft, changed: number, bound: number, keep: boolean): number {
  const { model, floor } = d
  floor.fill(Number.NEGATIVE_INFINITY)
  let from = d.restart[changed] as number
  const tail = keep ? draft.length + 1 : sameFrom(d, draft, changed)
  for (let pass = 0; pass <= model.tokens; pass++) {
    const pushed = onePass(d, draft, from, tail, bound, keep)
    if (pushed === FITS) return finish(d, draft, bound)
    if (pushed === NEVER) return Number.POSITIVE_INFINITY
    if (pushed < from) from = d.restart[pushed] as number
  }
  return Number.POSITIVE_INFINITY
}

const FITS = -1
const NEVER = -2

function onePass(d: Decoder, draft: LinkedDraft, from: number, tail: number, bound: number, keep: boolean): number {
  const { model, workFree, workAt, floor } = d
  const { people, durations, distances, firstOp, opCount, mate, isSecond, place, ticks } = model
  const { places, prices, lateness } = model.problem
  const { order, person, start, length } = draft
  const refused = lateness === 'refused'
  const row = from * people
  for (let p = 0; p < people; p++) {
    workFree[p] = d.free[row + p] as number
    workAt[p] = d.at[row + p] as number
  }
  let distance = d.distance[from] as number
  let late = d.late[from] as number
  let most = d.most[from] as number
  const room = bound - draft.out
  let pushed = FITS
  for (let k = from; k < length; k++) {
    if (keep) keepRow(d, k, distance, late, most)
    else if (k >= tail && d.restart[k] === k && pushed === FITS && standsAsKept(d, k)) {
      // Everyone stands where and when they stood in the kept draft, and the rest is the same: take it over.
      distance += (d.distance[length] as number) - (d.distance[k] as number)
      late += (d.late[length] as number) - (d.late[k] as number)
      most = Math.max(most, d.mostAfter[k] as number)
      for (let p = 0; p < people; p++) {
        workFree[p] = d.free[length * people + p] as number
        workAt[p] = d.at[length * people + p] as number
      }
      if (distance * prices.distance + late * prices.lateTick + most * prices.mostLate > room) return NEVER
      break
    }
    const token = order[k] as number
    const here = place[token] as number
    const op = firstOp[token] as number
    const lastOp = op + (opCount[token] as number)
    let t = floor[token] as number
    for (let o = op; o < lastOp; o++) {
      const p = person[o] as number
      let arrival = workFree[p] as number
      if (here >= 0) {
        const leg = (workAt[p] as number) * places + here
        arrival += durations[leg] as number
        distance += distances[leg] as number
        workAt[p] = here
      }
      if (arrival > t) t = arrival
    }
    t = openAt(model, token, t)
    if (isSecond[token] === 1) {
      const first = mate[token] as number
      let began = start[first] as number
      const least = model.least[token] as number
      const longest = model.most[token] as number
      if (t < began + least) t = openAt(model, token, began + least)
      if (t - began > longest + 1e-9) {
        const who = person[firstOp[first] as number] as number
        const took = ticks[firstOp[first] as number] as number
        if ((workFree[who] as number) === began + took) {
          // Nobody has gone on from the first part: push it up here and now.
          const before = lateAt(model, first, began)
          while (t - began > longest + 1e-9) {
            began = openAt(model, first, t - longest)
            if (t < began + least) t = openAt(model, token, began + least)
          }
          start[first] = began
          workFree[who] = began + took
          const after = lateAt(model, first, began)
          if (refused && after > 0) return NEVER
          late += after - before
          if (after > most) most = after
        } else {
          floor[first] = t - longest
          const position = order.indexOf(first)
          pushed = pushed === FITS ? position : Math.min(pushed, position)
        }
      }
    }
    start[token] = t
    const over = lateAt(model, token, t)
    if (over > 0) {
      if (refused) return NEVER
      late += over * (lastOp - op)
      if (over > most) most = over
    }
    for (let o = op; o < lastOp; o++) workFree[person[o] as number] = t + (ticks[o] as number)
    if (distance * prices.distance + late * prices.lateTick + most * prices.mostLate > room) return NEVER
  }
  if (keep) keepRow(d, length, distance, late, most)
  d.lastDistance = distance
  d.lastLate = late
  d.lastMost = most
  return pushed
}

function keepRow(d: Decoder, k: number, distance: number, late: number, most: number): void {
  const { workFree, workAt, free, at } = d
  const { people } = d.model
  const row = k * people
  for (let p = 0; p < people; p++) {
    free[row + p] = workFree[p] as number
    at[row + p] = workAt[p] as number
  }
  d.distance[k] = distance
  d.late[k] = late
  d.most[k] = most
}

/** Everyone's way home and overtime. */
function finish(d: Decoder, draft: LinkedDraft, bound: number): number {
  const { people, durations, distances, problem } = d.model
  const { prices } = problem
  let distance = d.lastDistance
  let overtime = 0
  for (let p = 0; p < people; p++) {
    const person = problem.people[p] as LinkedModel['problem']['people'][number]
    const at = d.workAt[p] as number
    const leg = at * problem.places + person.endPlace
    const free = d.workFree[p] as number
    if (at === person.startPlace && free === person.shift.from) continue
    const home = free + (durations[leg] as number)
    if (person.latestEnd !== undefined && home > person.latestEnd + 1e-9) return Number.POSITIVE_INFINITY
    distance += distances[leg] as number
    if (home > person.shift.to) overtime += (home - person.shift.to) * person.overtimePrice
  }
  d.lastDistance = distance
  d.lastOvertime = overtime
  const total = distance * prices.distance + d.lastLate * prices.lateTick + d.lastMost * prices.mostLate + overtime + draft.out
  return total > bound ? Number.POSITIVE_INFINITY : total
}

/** Times the draft afresh and keeps what later timings begin from; from position `changed` on. */
export function keepDraft(d: Decoder, draft: LinkedDraft, changed: number): void {
  const { model } = d
  if (changed === 0) {
    model.problem.people.forEach((person, p) => {
      d.free[p] = person.shift.from
      d.at[p] = person.startPlace
    })
    d.distance[0] = 0
    d.late[0] = 0
    d.most[0] = 0
    d.restart.fill(0)
  }
  draft.total = decode(d, draft, changed, Number.POSITIVE_INFINITY, true)
  markRestarts(d, draft)
}

/** No timing may begin between a first part and its second: the second may have pushed the first up, and without it the first would begin earlier. */
function markRestarts(d: Decoder, draft: LinkedDraft): void {
  const { model, restart } = d
  d.mostAfter[draft.length] = 0
  for (let k = draft.length - 1; k >= 0; k--) {
    const token = draft.order[k] as number
    d.mostAfter[k] = Math.max(d.mostAfter[k + 1] as number, lateAt(model, token, draft.start[token] as number))
  }
  copyDraft(draft, d.kept)
  for (let k = 0; k <= draft.length; k++) restart[k] = k
  for (let k = draft.length - 1; k >= 0; k--) {
    const token = draft.order[k] as number
    if (model.isSecond[token] !== 1) continue
    const position = draft.order.indexOf(model.mate[token] as number)
    for (let j = position + 1; j <= k; j++) restart[j] = Math.min(restart[j] as number, position)
  }
  for (let k = 0; k <= draft.length; k++) {
    let from = restart[k] as number
    while ((restart[from] as number) < from) from = restart[from] as number
    restart[k] = from
  }
}
