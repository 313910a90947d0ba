import type { Random } from '@almanac/dispatch/search/random'
import type { LinkedDraft } from './draft.ts'
import type { LinkedModel } from './linked-model.ts'

/** What the moves work on: `draft` is a copy of the current draft, changed in place. */
export interface MoveBench {
  readonly model: LinkedModel
  readonly random: Random
  readonly draft: LinkedDraft
  /** Visits in the order and visits left out, kept by `listVisits`. */
  planned: Int32Array
  leftOut: Int32Array
  /** Whether the last move changed which visits are planned. */
  relisted: boolean
}

/** Position of the first change, or −1 when the move could not be made. */
export type Changed = number

export function listVisits(model: LinkedModel, draft: LinkedDraft): { planned: Int32Array; leftOut: Int32Array } {
  const inOrder = new Set<number>()
  for (let k = 0; k < draft.length; k++) inOrder.add(visitOf(model, draft.order[k] as number))
  const all = model.problem.visits.map((_, v) => v)
  return { planned: Int32Array.from(all.filter((v) => inOrder.has(v))), leftOut: Int32Array.from(all.filter((v) => !inOrder.has(v))) }
}

function visitOf(model: LinkedModel, token: number): number {
  return model.opVisit[model.firstOp[token] as number] as number
}

function pick(list: Int32Array, random: Random): number {
  return list[random.below(list.length)] as number
}

/** Takes a visit's tokens out of the order; answers the position of the first. */
function takeOut(model: LinkedModel, draft: LinkedDraft, visit: number): Changed {
  let write = 0
  let first = -1
  for (let k = 0; k < draft.length; k++) {
    const token = draft.order[k] as number
    if (visitOf(model, token) === visit) {
      if (first < 0) first = k
    } else draft.order[write++] = token
  }
  draft.length = write
  return first
}

function insertToken(draft: LinkedDraft, position: number, token: number): void {
  draft.order.copyWithin(position + 1, position, draft.length)
  draft.order[position] = token
  draft.length++
}

/** Puts a visit's tokens at a position; a second part mostly right behind the first, sometimes after others' work. */
function putIn(bench: MoveBench, visit: number, position: number): void {
  const { model, draft, random } = bench
  const tokens = model.visitTokens[visit] as Int32Array
  insertToken(draft, position, tokens[0] as number)
  if (tokens.length < 2) return
  const behind = position + 1
  const gap = random.below(4) === 0 ? random.below(Math.min(8, draft.length - behind + 1)) : 0
  insertToken(draft, behind + gap, tokens[1] as number)
}

/** Gives each part someone who can do it, all different; keeps who has it where told. False when nobody is left for a part. */
function staff(bench: MoveBench, visit: number, keep: boolean, wanted: number): boolean {
  const { model, draft, random } = bench
  const ops = model.visitOps[visit] as Int32Array
  const { people, can } = model
  let wantedOp = -1
  if (wanted >= 0) {
    const from = random.below(ops.length)
    for (let i = 0; i < ops.length && wantedOp < 0; i++) {
      const op = ops[(from + i) % ops.length] as number
      if (can[op * people + wanted] === 1) wantedOp = op
    }
    if (wantedOp >= 0) draft.person[wantedOp] = wanted
  }
  for (const op of ops) {
    if (op === wantedOp) continue
    const list = model.able[op] as Int32Array
    if (list.length === 0) return false
    const has = draft.person[op] as number
    if (keep && has >= 0 && has !== wanted && random.below(2) === 0 && !taken(draft, ops, op, has, wantedOp)) continue
    const from = random.below(list.length)
    let chosen = -1
    for (let i = 0; i < list.length && chosen < 0; i++) {
      const p = list[(from + i) % list.length] as number
      if (!taken(draft, ops, op, p, wantedOp)) chosen = p
    }
    if (chosen < 0) return false
    draft.person[op] = chosen
  }
  return true
}

/** Whether someone already does another part of the visit: an earlier one, or the one settled first. */
function taken(draft: LinkedDraft, ops: Int32Array, op: number, person: number, settled: number): boolean {
  for (const other of ops) {
    if (other === op) continue
    if ((other < op || other === settled) && draft.person[other] === person) return true
  }
  return false
}

/** Puts a visit elsewhere: next to a near visit and with its person, or anywhere. */
export function relocate(bench: MoveBench, visit: number, wasOut: boolean): Changed {
  const { model, draft, random } = bench
  const removed = wasOut ? draft.length : takeOut(model, draft, visit)
  const near = model.near[visit] as Int32Array
  let position = random.below(draft.length + 1)
  let wanted = -1
  if (near.length > 0 && random.below(4) !== 0) {
    const beside = pick(near, random)
    const token = pick(model.visitTokens[beside] as Int32Array, random)
    const found = draft.order.indexOf(token)
    if (found >= 0 && found < draft.length) {
      position = found + random.below(2)
      wanted = draft.person[(model.firstOp[token] as number) + random.below(model.opCount[token] as number)] as number
    }
  }
  if (!staff(bench, visit, !wasOut, wanted)) return -1
  putIn(bench, visit, position)
  if (wasOut) draft.out -= model.leaveOut[visit] as number
  return Math.min(removed, position)
}

/** Leaves a visit out. */
export function leave(bench: MoveBench, visit: number): Changed {
  const first = takeOut(bench.model, bench.draft, visit)
  bench.draft.out += bench.model.leaveOut[visit] as number
  return first
}

/** Someone else does one part of a visit. */
export function restaff(bench: MoveBench, visit: number): Changed {
  const { model, draft, random } = bench
  const ops = model.visitOps[visit] as Int32Array
  const op = pick(ops, random)
  const list = model.able[op] as Int32Array
  const p = pick(list, random)
  if (list.length < 2 || p === draft.person[op]) return -1
  const before = draft.person[op] as number
  for (const other of ops) {
    if (other === op || draft.person[other] !== p) continue
    // The two change parts, if both can.
    if (model.can[other * model.people + before] !== 1) return -1
    draft.person[other] = before
  }
  draft.person[op] = p
  return firstPosition(model, draft, visit)
}

function firstPosition(model: LinkedModel, draft: LinkedDraft, visit: number): number {
  return draft.order.indexOf((model.visitTokens[visit] as Int32Array)[0] as number)
}

/** Moves one token a few places in the common order; a second part stays behind its first. */
export function shift(bench: MoveBench, visit: number): Changed {
  const { model, draft, random } = bench
  const token = pick(model.visitTokens[visit] as Int32Array, random)
  const from = draft.order.indexOf(token)
  const span = 1 + random.below(6)
  let to = random.below(2) === 0 ? from - span : from + span
  to = Math.max(0, Math.min(draft.length - 1, to))
  const mate = model.mate[token] as number
  if (mate >= 0) {
    const other = draft.order.indexOf(mate)
    to = model.isSecond[token] === 1 ? Math.max(to, other + 1) : Math.min(to, other - 1)
  }
  if (to === from) return -1
  if (to > from) draft.order.copyWithin(from, from + 1, to + 1)
  else draft.order.copyWithin(to + 1, to, from)
  draft.order[to] = token
  return Math.min(from, to)
}

/** Two visits of one token each change places in the order, and, where both can, people. */
export function exchange(bench: MoveBench, visit: number): Changed {
  const { model, draft, random } = bench
  const other = random.below(2) === 0 ? pick(model.near[visit] as Int32Array, random) : pick(bench.planned, random)
  if (other === visit || other === undefined) return -1
  const a = model.visitTokens[visit] as Int32Array
  const b = model.visitTokens[other] as Int32Array
  if (a.length !== b.length) return -1
  let first = draft.length
  for (let i = 0; i < a.length; i++) {
    const x = draft.order.indexOf(a[i] as number)
    const y = draft.order.indexOf(b[i] as number)
    if (x < 0 || y < 0 || x >= draft.length || y >= draft.length) return -1
    draft.order[x] = b[i] as number
    draft.order[y] = a[i] as number
    first = Math.min(first, x, y)
  }
  const opsA = model.visitOps[visit] as Int32Array
  const opsB = model.visitOps[other] as Int32Array
  if (opsA.length !== opsB.length) return first
  for (let i = 0; i < opsA.length; i++) if (!canSwap(model, draft, opsA[i] as number, opsB[i] as number)) return first
  for (let i = 0; i < opsA.length; i++) swapPeople(draft, opsA[i] as number, opsB[i] as number)
  return first
}

function canSwap(model: LinkedModel, draft: LinkedDraft, a: number, b: number): boolean {
  const { people, can } = model
  return can[a * people + (draft.person[b] as number)] === 1 && can[b * people + (draft.person[a] as number)] === 1
}

function swapPeople(draft: LinkedDraft, a: number, b: number): void {
  const held = draft.person[a] as number
  draft.person[a] = draft.person[b] as number
  draft.person[b] = held
}

/** From a position on, two people change all their work, as far as both can do it. */
export function crossTails(bench: MoveBench): Changed {
  const { model, draft, random } = bench
  if (model.people < 2) return -1
  const a = random.below(model.people)
  const b = (a + 1 + random.below(model.people - 1)) % model.people
  const from = random.below(draft.length)
  const until = random.below(3) === 0 ? Math.min(draft.length, from + 1 + random.below(12)) : draft.length
  let first = -1
  for (let k = from; k < until; k++) {
    const token = draft.order[k] as number
    const op = model.firstOp[token] as number
    for (let o = op; o < op + (model.opCount[token] as number); o++) {
      const has = draft.person[o] as number
      if (has !== a && has !== b) continue
      const gets = has === a ? b : a
      if (model.can[o * model.people + gets] !== 1) return -1
      draft.person[o] = gets
      if (first < 0) first = k
    }
  }
  if (first < 0 || !stillDifferent(model, draft, from)) return -1
  return first
}

/** A first part before the cut and its second behind it could now have the same person. */
function stillDifferent(model: LinkedModel, draft: LinkedDraft, from: number): boolean {
  for (let k = from; k < draft.length; k++) {
    const token = draft.order[k] as number
    const mate = model.mate[token] as number
    if (mate < 0) continue
    if (draft.person[model.firstOp[token] as number] === draft.person[model.firstOp[mate] as number]) return false
  }
  return true
}
