import type { FuzzRequest } from '../../../tests/support/fuzz/requests.ts'
import { table } from './table.ts'
import { quantile, round } from './timing.ts'

/** A request and what became of it; `bytes` of its body, status 0 where the connection ended without an answer. */
type Noted = { turn: number; request: FuzzRequest; bytes: number; chunked: boolean; status: number; text: string; ms: number }

const STACK = /\bat [\w.<>]+ \(|node_modules|\.ts:\d+/
const SLOW_MS = 3_000
const SHOWN = 12

/** Requests that one handler answers, whatever ids and tokens stand in them. */
function routeOf({ what, path }: FuzzRequest): string {
  if (what.startsWith('procedure') || what === 'page' || what === 'large body') return what
  return `${what} /${path.split(/[/?]/).slice(1, 3).join('/')}`
}

const sumOf = (counts: ReadonlyMap<number, number>, counted: (status: number) => boolean) =>
  [...counts].reduce((sum, [status, count]) => (counted(status) ? sum + count : sum), 0)

/** How often a kind of request was sent, and with how large a body. */
type Kind = { requests: number; over100kB: number; over1MB: number; over10MB: number; bytes: number }

type Route = { answers: number; slow: number; cut: number; slowestMs: number }

/** What a run of random requests met: every answer is counted, the slowest are kept. */
export class FuzzNotes {
  readonly wrong: string[] = []
  readonly statuses = new Map<number, number>()
  private readonly routes = new Map<string, Route>()
  private readonly kinds = new Map<string, Kind>()
  private slowest: Noted[] = []
  private readonly cut: Noted[] = []
  private stacks = 0

  add(one: Noted): void {
    const { turn, request, status, text, ms } = one
    this.count(request.what.split(' /')[0]?.replace(/^procedure .*/, 'procedure') ?? '', one.bytes)
    this.statuses.set(status, (this.statuses.get(status) ?? 0) + 1)
    const route = this.routeOf(request)
    route.answers++
    route.slowestMs = Math.max(route.slowestMs, ms)
    if (ms > SLOW_MS) route.slow++
    const which = `${turn} ${request.what} ${request.method} ${request.path.slice(0, 120)} as ${request.as}`
    if (status >= 500 && status !== 503)
      this.wrong.push(`${which}: ${status} ${text.slice(0, 200)} ← ${request.body?.head.slice(0, 400) ?? ''}`)
    if (status !== 200 && STACK.test(text)) {
      this.stacks++
      this.wrong.push(`${which}: a stack in the answer: ${text.slice(0, 200)}`)
    }
    if (status === 0) {
      route.cut++
      if (this.cut.length < SHOWN * 4) this.cut.push(one)
    }
    this.slowest = [...this.slowest, one].sort((a, b) => b.ms - a.ms).slice(0, SHOWN)
  }

  private count(name: string, bytes: number): void {
    const kind = this.kinds.get(name) ?? { requests: 0, over100kB: 0, over1MB: 0, over10MB: 0, bytes: 0 }
    this.kinds.set(name, kind)
    kind.requests++
    kind.bytes += bytes
    if (bytes > 1e5) kind.over100kB++
    if (bytes > 1e6) kind.over1MB++
    if (bytes > 1e7) kind.over10MB++
  }

  private routeOf(request: FuzzRequest): Route {
    const name = routeOf(request)
    const route = this.routes.get(name) ?? { answers: 0, slow: 0, cut: 0, slowestMs: 0 }
    this.routes.set(name, route)
    return route
  }

  tables(): string[] {
    const row = ({ turn, status, ms, request, bytes, chunked, text }: Noted) => [
      ...[turn, Math.round(ms), status, request.what, request.as, round(bytes / 1e6, 3), chunked ? 'unsaid' : 'said'],
      `${request.path.slice(0, 60)} ${JSON.stringify(request.body?.head.slice(0, 20) ?? '')} ${text.slice(0, 60).trim()}`,
    ]
    const header = ['turn', 'ms', 'status', 'what', 'as', 'MB', 'length', 'path, begin of body, begin of answer']
    const odd = [...this.routes].filter(([, one]) => one.slow + one.cut > 0)
    return [
      table(
        'What was asked',
        ['kind', 'requests', 'over 100 kB', 'over 1 MB', 'over 10 MB', 'MB in all'],
        [...this.kinds]
          .sort((a, b) => b[1].requests - a[1].requests)
          .map(([name, one]) => [name, one.requests, one.over100kB, one.over1MB, one.over10MB, round(one.bytes / 1e6, 1)]),
      ),
      table('Slowest', header, this.slowest.map(row)),
      ...(this.cut.length ? [table('Connections that ended without an answer', header, this.cut.map(row))] : []),
      ...(odd.length
        ? [
            table(
              'Routes with answers over 3 s, or none',
              ['route', 'requests', 'over 3 s', 'no answer', 'slowest ms'],
              odd.map(([name, one]) => [name, one.answers, one.slow, one.cut, Math.round(one.slowestMs)]),
            ),
          ]
        : []),
    ]
  }

  figures() {
    const sum = (of: (one: Route) => number) => [...this.routes.values()].reduce((all, one) => all + of(one), 0)
    return {
      wrong: this.wrong.length,
      stacks: this.stacks,
      failures: sumOf(this.statuses, (status) => status >= 500),
      over3s: sum((one) => one.slow),
      over3sByRoute: Object.fromEntries([...this.routes].filter(([, one]) => one.slow > 0).map(([name, one]) => [name, one.slow])),
      noAnswer: sum((one) => one.cut),
      slowestMs: Math.round(this.slowest[0]?.ms ?? 0),
    }
  }
}

/** How a figure went over time: its first, middle and last reading, and its highest. */
export function course(readings: readonly number[]) {
  const sorted = [...readings].sort((a, b) => a - b)
  return {
    first: Math.round(readings[0] ?? 0),
    median: Math.round(quantile(sorted, 0.5)),
    last: Math.round(readings.at(-1) ?? 0),
    most: Math.round(sorted.at(-1) ?? 0),
  }
}
