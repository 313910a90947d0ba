import { readDueBeds } from '@almanac/database/read/due-beds'
import { readDueMonths } from '@almanac/database/read/due-months'
import { addMembership, addPerson } from '@almanac/identity/people'
import { sendTaskAlone } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { addFleet, ROWS_A_BED } from './fleets.ts'
import { signIn } from './http-client.ts'
import { type List, type Measured, measureList } from './measure.ts'
import type { replayer } from './raw-driver.ts'
import { round } from './timing.ts'

const BENCH_PERSON = { name: 'Bench Owner', email: 'owner@bench.example.com', password: 'bench-owner-password' }
const FORECAST_PATIENCE_SECONDS = 600

export type Sizes = { beds: number; othersRows: number; day: string }
export type ComingDue = {
  beds: number
  othersRows: number
  fillSeconds: number
  forecastSeconds: number
  forecastBedsPerSecond: number
  lists: Measured[]
}

/** Coming due of a company with many beds, beside the rows of many other companies. The worker forecasts the beds, so their figures are real. */
export async function measureComingDue(
  app: { baseUrl: string; urls: Record<string, string> },
  raw: ReturnType<typeof replayer>,
  { beds, othersRows, day }: Sizes,
  say: (line: string) => void,
): Promise<ComingDue> {
  const owner = new pg.Client({ connectionString: app.urls.MIGRATION_DATABASE_URL })
  owner.on('error', () => {}) // a stop in the middle ends the server first; what runs then fails by itself
  await owner.connect()
  try {
    const begun = performance.now()
    const bedsEach = 50_000
    const companies = Math.ceil(othersRows / ROWS_A_BED / bedsEach)
    for (let i = 1; i <= companies; i++) {
      await addFleet(owner, `Beside ${i}`, Math.min(bedsEach, Math.ceil(othersRows / ROWS_A_BED) - (i - 1) * bedsEach), day, true)
      if (i % 5 === 0 || i === companies) say(`rows of ${i} of ${companies} other companies are in`)
    }
    const companyId = await addFleet(owner, 'Bench fleet', beds, day, false)
    await owner.query('analyze')
    const fillSeconds = round((performance.now() - begun) / 1000, 1)
    const forecastSeconds = await forecast(owner, companyId, beds, say)
    await owner.query('vacuum (analyze) bed_forecast')

    await addMembership(await addPerson(BENCH_PERSON), companyId, 'owner')
    const client = await signIn(app.baseUrl, BENCH_PERSON.email, BENCH_PERSON.password)
    const lists: Measured[] = []
    for (const list of await dueLists(companyId, day)) lists.push(await measureList(list, client, raw))
    client.close()
    return {
      beds,
      othersRows: companies ? othersRows : 0,
      fillSeconds,
      forecastSeconds,
      forecastBedsPerSecond: round(beds / forecastSeconds, 0),
      lists,
    }
  } finally {
    await owner.end()
  }
}

/** Asks the worker for the company's forecasts and waits until the month picture stands too. */
async function forecast(owner: pg.Client, companyId: string, beds: number, say: (line: string) => void): Promise<number> {
  await sendTaskAlone('forecast-company', { companyId, cause: 'nightly' })
  const begun = performance.now()
  await owner.query("select set_config('app.company_id', $1, false)", [companyId])
  try {
    for (let seconds = 1; seconds <= FORECAST_PATIENCE_SECONDS; seconds++) {
      const { rows } = await owner.query<{ done: boolean; beds: number }>(
        `select exists (select from forecast_run r join forecast_month m on m.company_id = r.company_id and m.run_id = r.id
                         where r.company_id = $1 and r.finished_at is not null) as done,
                (select count(*)::int from bed_forecast where company_id = $1) as beds`,
        [companyId],
      )
      if (rows[0]?.done && rows[0].beds === beds) return round((performance.now() - begun) / 1000, 1)
      if (seconds % 20 === 0) say(`${rows[0]?.beds ?? 0} of ${beds} beds are forecast`)
      await new Promise((next) => setTimeout(next, 1000))
    }
  } finally {
    await owner.query("select set_config('app.company_id', '', false)")
  }
  throw new Error(`The worker did not forecast ${beds} beds within ${FORECAST_PATIENCE_SECONDS} s: see .data/logs/bench-worker.log.`)
}

/** The first page in each order, one deep in the list, the usual filters, and the month picture above. */
async function dueLists(companyId: string, today: string): Promise<List[]> {
  const scope = { companyId }
  const limit = 50
  const due = (name: string, query: Omit<Parameters<typeof readDueBeds>[1], 'limit'>): List => ({
    name,
    procedure: 'due/beds',
    input: { ...query, limit },
    read: () => readDueBeds(scope, { ...query, limit }, today),
  })
  let cursor: string | undefined
  for (let page = 0; page < 20; page++)
    cursor = (await readDueBeds(scope, { sort: 'chance', limit: 200, cursor }, today)).nextCursor ?? cursor
  const month = `${Number(today.slice(0, 4)) + 2}${today.slice(4, 7)}`
  return [
    due('by chance', { sort: 'chance' }),
    due('by middle day', { sort: 'due' }),
    due('by age', { sort: 'age' }),
    due('after 4,000 beds', { sort: 'chance', cursor }),
    due('in one month', { sort: 'chance', month }),
    due('10 years and more', { sort: 'due', minAgeYears: 10 }),
    { name: 'month picture', procedure: 'due/months', input: {}, read: () => readDueMonths(scope, {}, 'Europe/Dublin') },
  ]
}
