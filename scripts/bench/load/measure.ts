import type { AppClient } from './http-client.ts'
import { recordStatements, type replayer } from './raw-driver.ts'
import { round, type Spread, timeBoth } from './timing.ts'

/** One list of the app, and the same read without the app around it. */
export type List = { name: string; procedure: string; input: object; read: () => Promise<unknown> }

export type Measured = {
  list: string
  rows: number
  one: { p50: number; p95: number; rawP50: number; rawP95: number; ratioP50: number; ratioP95: number }
  ten: { p50: number; p95: number; rawP50: number; rawP95: number; ratioP50: number; ratioP95: number }
}

const ONE = { clients: 1, times: 200, seconds: 8 }
const TEN = { clients: 10, times: 600, seconds: 10 }

/** Times a list over HTTP and the same SQL, role, transaction and JSON on the plain driver, at one and ten clients. */
export async function measureList(list: List, client: AppClient, raw: ReturnType<typeof replayer>): Promise<Measured> {
  const statements = await recordStatements(list.read)
  const answer = (await client.ask(list.procedure, list.input)).json as { rows?: unknown[]; months?: unknown[] }
  const over = async (bounds: typeof ONE) =>
    compare(
      ...(await timeBoth(
        () => client.ask(list.procedure, list.input),
        () => raw.replay(statements),
        bounds,
      )),
    )
  return { list: list.name, rows: (answer.rows ?? answer.months ?? []).length, one: await over(ONE), ten: await over(TEN) }
}

function compare(app: Spread, raw: Spread): Measured['one'] {
  return {
    p50: round(app.p50),
    p95: round(app.p95),
    rawP50: round(raw.p50),
    rawP95: round(raw.p95),
    ratioP50: round(app.p50 / raw.p50),
    ratioP95: round(app.p95 / raw.p95),
  }
}

export const MEASURED_HEADER = [
  'list',
  'rows',
  'p50 ms',
  'p95 ms',
  'raw p50',
  'ratio p50',
  'ratio p95',
  '10: p50',
  '10: p95',
  '10: raw p50',
  '10: ratio p50',
  '10: ratio p95',
]
export const measuredRow = ({ list, rows, one, ten }: Measured) => [
  list,
  rows,
  one.p50,
  one.p95,
  one.rawP50,
  one.ratioP50,
  one.ratioP95,
  ten.p50,
  ten.p95,
  ten.rawP50,
  ten.ratioP50,
  ten.ratioP95,
]
