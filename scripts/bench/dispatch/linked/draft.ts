import type { LinkedModel } from './linked-model.ts'

/** A common order of tokens and who does each op. People's own orders follow from it; so no order can lock two people into waiting for each other. */
export interface LinkedDraft {
  readonly order: Int32Array
  length: number
  readonly person: Int32Array
  readonly start: Float64Array
  /** Price of what is left out. */
  out: number
  total: number
}

/** What stands before each position of the current draft, so that a changed draft is timed from its first change only. */
export interface Decoder {
  readonly model: LinkedModel
  readonly free: Float64Array
  readonly at: Int32Array
  readonly distance: Float64Array
  readonly late: Float64Array
  readonly most: Float64Array
  /** The latest position at or before this one from which timing may begin. */
  readonly restart: Int32Array
  /** The kept draft itself, and the largest lateness from each position on. */
  readonly kept: LinkedDraft
  readonly mostAfter: Float64Array
  readonly floor: Float64Array
  readonly workFree: Float64Array
  readonly workAt: Int32Array
  // of the last decode
  lastDistance: number
  lastLate: number
  lastMost: number
  lastOvertime: number
}

export function newDecoder(model: LinkedModel): Decoder {
  const rows = model.tokens + 1
  return {
    model,
    free: new Float64Array(rows * model.people),
    at: new Int32Array(rows * model.people),
    distance: new Float64Array(rows),
    late: new Float64Array(rows),
    most: new Float64Array(rows),
    restart: new Int32Array(rows),
    kept: newDraft(model),
    mostAfter: new Float64Array(rows),
    floor: new Float64Array(model.tokens),
    workFree: new Float64Array(model.people),
    workAt: new Int32Array(model.people),
    lastDistance: 0,
    lastLate: 0,
    lastMost: 0,
    lastOvertime: 0,
  }
}

export function newDraft(model: LinkedModel): LinkedDraft {
  return {
    order: new Int32Array(model.tokens),
    length: 0,
    person: new Int32Array(model.ops).fill(-1),
    start: new Float64Array(model.tokens),
    out: 0,
    total: Number.POSITIVE_INFINITY,
  }
}

export function copyDraft(from: LinkedDraft, to: LinkedDraft): void {
  to.order.set(from.order)
  to.person.set(from.person)
  to.start.set(from.start)
  to.length = from.length
  to.out = from.out
  to.total = from.total
}

/** Earliest beginning at or after `t`: in the first window that is not over, else late after the last. */
export function openAt(model: LinkedModel, token: number, t: number): number {
  let w = model.windowFirst[token] as number
  const last = model.windowLast[token] as number
  while (w < last && (model.windowTo[w] as number) < t) w++
  return Math.max(t, model.windowFrom[w] as number)
}

export function lateAt(model: LinkedModel, token: number, t: number): number {
  return Math.max(0, t - (model.windowTo[model.windowLast[token] as number] as number))
}

/** The first position from which the draft's tokens and people are those of the kept draft to the end; past the end when their lengths differ. */
export function sameFrom(d: Decoder, draft: LinkedDraft, changed: number): number {
  const { kept, model } = d
  let k = draft.length
  if (k !== kept.length) return k + 1
  while (k > changed) {
    const token = draft.order[k - 1] as number
    if (token !== kept.order[k - 1]) break
    const first = model.firstOp[token] as number
    let same = true
    for (let op = first + (model.opCount[token] as number) - 1; op >= first; op--) same &&= draft.person[op] === kept.person[op]
    if (!same) break
    k--
  }
  return k
}

export function standsAsKept(d: Decoder, k: number): boolean {
  const { people } = d.model
  const row = k * people
  for (let p = 0; p < people; p++) if (d.workFree[p] !== d.free[row + p] || d.workAt[p] !== d.at[row + p]) return false
  return true
}
