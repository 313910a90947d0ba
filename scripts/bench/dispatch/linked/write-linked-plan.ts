import type { Decoder, LinkedDraft } from './draft.ts'
import type { LinkedPart, LinkedPlan } from './linked-problem.ts'

/** The plan of the draft that was kept last. */
export function writeLinkedPlan(decoder: Decoder, draft: LinkedDraft): LinkedPlan {
  const { model } = decoder
  const people: LinkedPart[][] = model.problem.people.map(() => [])
  const planned = new Set<number>()
  for (let k = 0; k < draft.length; k++) {
    const token = draft.order[k] as number
    const first = model.firstOp[token] as number
    const start = draft.start[token] as number
    for (let op = first; op < first + (model.opCount[token] as number); op++) {
      const visit = model.opVisit[op] as number
      planned.add(visit)
      const end = start + (model.ticks[op] as number)
      people[draft.person[op] as number]?.push({ visit, need: model.opNeed[op] as number, start, end })
    }
  }
  return {
    people,
    leftOut: model.problem.visits.flatMap((_, v) => (planned.has(v) ? [] : [v])),
    distance: decoder.lastDistance,
    totalLate: decoder.lastLate,
    mostLate: decoder.lastMost,
    overtimePrice: decoder.lastOvertime,
    leftOutPrice: draft.out,
    total: draft.total,
  }
}
