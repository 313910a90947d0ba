import { closeClients } from '@almanac/database/client'
import { dayIn } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { measureComingDue } from './coming-due.ts'
import { type AppClient, signIn } from './http-client.ts'
import { measureImport } from './import.ts'
import { listsOf } from './lists.ts'
import { MEASURED_HEADER, type Measured, measuredRow, measureList } from './measure.ts'
import { replayer } from './raw-driver.ts'
import { table } from './table.ts'

export type App = {
  baseUrl: string
  urls: Record<string, string>
  signIns: { role: string; email: string; password: string; company: string }[]
}
export type Sizes = { beds: number; othersRows: number; importRows: number }

const TARGET = 8

/** Measures the lists, an import and Coming due, prints a table of each, answers the figures. */
export async function measureAll(app: App, { beds, othersRows, importRows }: Sizes, say: (line: string) => void) {
  const raw = replayer(app.urls.DATABASE_URL ?? '')
  try {
    const lists = await measureLists(app, raw, say)
    console.log(table('Lists of the demo firm (1,500 sites), against the plain driver', MEASURED_HEADER, lists.map(measuredRow)))
    const day = dayIn('Europe/Dublin')
    const due = await measureComingDue(app, raw, { beds, othersRows, day }, say)
    console.log(table(`Coming due: ${due.beds} beds, ${due.othersRows} rows of others beside`, MEASURED_HEADER, due.lists.map(measuredRow)))
    console.log(
      `\nFilled in ${due.fillSeconds} s; the worker forecast ${due.beds} beds in ${due.forecastSeconds} s (${due.forecastBedsPerSecond} a second).`,
    )
    // last, so that it runs beside everything above and in a company that no statistics know yet
    const imported = await measureImport(app, importRows, say)
    const header = ['import', 'upload s', 'check s', 'apply s', 'rows a second', 'forecast s', 'created', 'problems']
    const { rows, uploadSeconds, checkSeconds, applySeconds, rowsPerSecond, forecastSeconds, created, problems } = imported
    const figures = [uploadSeconds, checkSeconds, applySeconds, rowsPerSecond, forecastSeconds ?? 'not done', created, problems]
    console.log(table('Import of a firm’s list, beside the rows above', header, [[`${rows} rows`, ...figures]]))
    const over = [...lists, ...due.lists].filter((one) => one.one.ratioP50 > TARGET).map((one) => one.list)
    console.log(
      over.length
        ? `p50 above ${TARGET} times the plain driver at one client: ${over.join(', ')}`
        : `p50 within ${TARGET} times the plain driver: all.`,
    )
    return { targetRatio: TARGET, aboveTarget: over, lists, import: imported, comingDue: due }
  } finally {
    await raw.close()
    await closeTaskQueue()
    await closeClients()
  }
}

async function measureLists(app: App, raw: ReturnType<typeof replayer>, say: (line: string) => void): Promise<Measured[]> {
  const owner = app.signIns.find(({ role }) => role === 'owner')
  if (!owner) throw new Error('The demo names no owner.')
  const companyId = await demoCompany(app, owner.company)
  const client: AppClient = await signIn(app.baseUrl, owner.email, owner.password)
  await waitForReminders(client, say)
  const measured: Measured[] = []
  for (const list of listsOf(companyId, dayIn('America/Chicago'))) measured.push(await measureList(list, client, raw))
  client.close()
  return measured
}

async function demoCompany(app: App, name: string): Promise<string> {
  const identity = new pg.Client({ connectionString: app.urls.IDENTITY_DATABASE_URL })
  await identity.connect()
  try {
    const { rows } = await identity.query<{ id: string }>('select id from company where name = $1', [name])
    if (!rows[0]) throw new Error('The demo company is not there.')
    return rows[0].id
  } finally {
    await identity.end()
  }
}

/** The lists are measured once the worker has forecast the demo and raised its reminders, so that they hold rows and nothing else works meanwhile. */
async function waitForReminders(client: AppClient, say: (line: string) => void): Promise<void> {
  for (let tries = 0; tries < 120; tries++) {
    const { rows } = (await client.ask('reminders/list', { state: 'waiting', limit: 1 })).json as { rows: unknown[] }
    if (rows.length) return
    if (tries === 5) say('waiting for the first forecasts and reminders')
    await new Promise((next) => setTimeout(next, 1000))
  }
  say('no reminder came within two minutes: its list is measured empty')
}
