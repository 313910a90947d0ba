import type { Model } from './model.ts'

/** For each visit its `width` nearest others, one row after another: near in drive, and in time (Vidal et al. 2013: waiting weighs 0.2, lateness 1). */
export interface Neighbours {
  readonly width: number
  readonly list: Int32Array
}

export function findNeighbours(model: Model, most: number): Neighbours {
  const { visits, place, row, edge, duration, service, problem } = model
  const width = Math.max(0, Math.min(most, visits - 1))
  const list = new Int32Array(visits * width)
  const scale = pricePerTick(model)
  const spans = problem.visits.map((visit) => (visit.promised ? [visit.promised.start] : visit.windows))
  const oneWay = (u: number, v: number): number => {
    const leg = (row[u] as number) + (place[v] as number)
    const passing = (service[u] as number) + (duration[leg] as number)
    let gap = Number.POSITIVE_INFINITY
    for (const a of spans[u] as readonly { from: number; to: number }[]) {
      for (const b of spans[v] as readonly { from: number; to: number }[]) {
        const wait = Math.max(0, b.from - passing - a.to)
        const late = Math.max(0, a.from + passing - b.to)
        gap = Math.min(gap, 0.2 * wait + late)
      }
    }
    return (edge[leg] as number) + scale * Math.min(gap, 1e9)
  }
  const nearness = new Float64Array(visits)
  const order: number[] = []
  for (let u = 0; u < visits; u++) {
    order.length = 0
    for (let v = 0; v < visits; v++) {
      if (v === u) continue
      nearness[v] = Math.min(oneWay(u, v), oneWay(v, u))
      order.push(v)
    }
    order.sort((a, b) => (nearness[a] as number) - (nearness[b] as number) || a - b)
    list.set(order.slice(0, width), u * width)
  }
  return { width, list }
}

/** What a tick of driving costs on the average: turns lateness into prices. */
export function pricePerTick(model: Model): number {
  let price = 0
  let ticks = 0
  for (let i = 0; i < model.edge.length; i++) {
    price += model.edge[i] as number
    ticks += model.duration[i] as number
  }
  return ticks > 0 && price > 0 ? price / ticks : 1
}
