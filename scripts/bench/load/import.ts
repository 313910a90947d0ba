import { addMembership, addPerson } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { type AppClient, signIn } from './http-client.ts'
import { round } from './timing.ts'

const PERSON = { name: 'Import Owner', email: 'importer@bench.example.com', password: 'bench-import-password' }
const PATIENCE_SECONDS = 900
const FORECAST_PATIENCE_SECONDS = 300

export type Imported = {
  rows: number
  uploadSeconds: number
  checkSeconds: number
  applySeconds: number
  rowsPerSecond: number
  /** From the import to the month picture of the new beds; null when it did not stand within five minutes. */
  forecastSeconds: number | null
  created: number
  problems: number
}

type Batch = {
  version: number
  state: string
  failure: string | null
  counts: { created: number; problem: number } | null
  columns: Column[]
}
type Column = {
  column: number
  field: string | null
  hardnessUnit?: string
  concentrationUnit?: string
  volumeUnit?: string
  dayOrder?: string
}

/** A list such as a firm keeps: sizes, grains, years and notes mixed, one row in two hundred wrong. */
function listOf(rows: number): string {
  const tanks = ['10x54', '9 x 48', '"48,000 grain"', '12x52', '10 x 44']
  const dates = ['2014-05-12', '2009', 'before 2015', '2018-11-03', '']
  const lines = ['Customer no.,Name,Phone,E-mail,Street,Town,Tank,Installed,Last visit,Hardness gpg,Water,Notes']
  for (let n = 1; n <= rows; n++) {
    const hardness = n % 200 === 0 ? 'hard' : String(8 + (n % 20))
    const note = n % 9 === 0 ? 'rebed 2016' : ''
    lines.push(
      `B${n},Bench Family ${n},(292) 555-${1000 + (n % 9000)},family${n}@bench.example.com,${n} Bench Road,Town ${n % 50},${tanks[n % 5]},${dates[n % 5]},` +
        `2023-0${1 + (n % 9)}-15,${hardness},${n % 7 ? 'Bench town supply' : 'well'},${note}`,
    )
  }
  return lines.join('\n')
}

/** Brings a list into an empty company as a person does: upload, confirm the suggested columns, apply, wait for the worker. */
export async function measureImport(
  app: { baseUrl: string; urls: Record<string, string> },
  rows: number,
  say: (line: string) => void,
): Promise<Imported> {
  const companyId = newId()
  const owner = new pg.Client({ connectionString: app.urls.MIGRATION_DATABASE_URL })
  await owner.connect()
  await owner.query(
    "insert into company (id, name, time_zone, unit_system, currency) values ($1, 'Bench import', 'America/Chicago', 'us', 'USD')",
    [companyId],
  )
  await owner.end()
  await addMembership(await addPerson(PERSON), companyId, 'owner')
  const client = await signIn(app.baseUrl, PERSON.email, PERSON.password)
  try {
    const seconds = stopwatch()
    const { batchId } = await client.upload<{ batchId: string }>('/api/imports?name=bench.csv', listOf(rows))
    const draft = await readWhen(client, batchId)
    const uploadSeconds = seconds()
    const columns = draft.columns.map(({ column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder }) => ({
      ...{ column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder },
    }))
    const named = columns.filter((one) => one.field !== null).length
    if (named < 10) throw new Error(`Only ${named} of the list's columns were understood, so the figures would mean little.`)
    seconds()
    const checked = await client.ask('imports/check', { commandId: newId(), batchId, version: draft.version, columns })
    const checkSeconds = seconds()
    await client.ask('imports/apply', { commandId: newId(), batchId, version: (checked.json as { version: number }).version })
    const done = await applied(client, batchId, rows, say)
    const applySeconds = seconds()
    const all = uploadSeconds + checkSeconds + applySeconds
    const forecastSeconds = (await forecastDone(client)) ? seconds() : null
    const { created = 0, problem = 0 } = done.counts ?? {}
    return {
      rows,
      uploadSeconds,
      checkSeconds,
      applySeconds,
      rowsPerSecond: round(rows / all, 0),
      forecastSeconds,
      created,
      problems: problem,
    }
  } finally {
    client.close()
  }
}

/** The import once its file is read. */
async function readWhen(client: AppClient, batchId: string): Promise<Batch> {
  for (const end = performance.now() + PATIENCE_SECONDS * 1000; performance.now() < end; ) {
    const batch = await read(client, batchId)
    if (batch.state === 'draft') return batch
    if (batch.state === 'refused') throw new Error(`The list was refused: ${batch.failure}`)
    await new Promise((next) => setTimeout(next, 100))
  }
  throw new Error(`The list was not read within ${PATIENCE_SECONDS} s: see .data/logs/bench-worker.log.`)
}

const read = async (client: AppClient, batchId: string) => (await client.ask('imports/batch', { batchId })).json as Batch

async function applied(client: AppClient, batchId: string, rows: number, say: (line: string) => void): Promise<Batch> {
  const end = performance.now() + PATIENCE_SECONDS * 1000
  for (let looks = 1; performance.now() < end; looks++) {
    const batch = await read(client, batchId)
    if (batch.state === 'applied') return batch
    if (batch.state === 'failed' && looks > 30) throw new Error(`The import failed: ${batch.failure}`)
    if (looks % 40 === 0) say(`importing ${rows} rows: ${batch.state}`)
    await new Promise((next) => setTimeout(next, 500))
  }
  throw new Error(`The import of ${rows} rows was not applied within ${PATIENCE_SECONDS} s: see .data/logs/bench-worker.log.`)
}

/** Waits for the first forecasts of the company. */
async function forecastDone(client: AppClient): Promise<boolean> {
  for (const end = performance.now() + FORECAST_PATIENCE_SECONDS * 1000; performance.now() < end; ) {
    if (((await client.ask('due/months', {})).json as { asOfDay: string | null }).asOfDay !== null) return true
    await new Promise((next) => setTimeout(next, 500))
  }
  return false
}

/** Seconds since it was last asked. */
function stopwatch(): () => number {
  let since = performance.now()
  return () => {
    const seconds = round((performance.now() - since) / 1000, 1)
    since = performance.now()
    return seconds
  }
}
