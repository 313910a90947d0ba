import fs from 'node:fs'
import { configure, Uint8ArrayReader, Uint8ArrayWriter, ZipReader } from '@zip.js/zip.js'
import pg from 'pg'
import type { Manifest } from '../../packages/operations/keeping/write-archive.ts'
import { testDatabase } from './test-database.ts'

configure({ useWebWorkers: false })

export type Archive = Map<string, string>

/** The texts of an archive, by name. */
export async function readArchive(file: string): Promise<Archive> {
  const zip = new ZipReader(new Uint8ArrayReader(fs.readFileSync(file)))
  const texts: Archive = new Map()
  for (const entry of await zip.getEntries())
    if (!entry.directory) texts.set(entry.filename, Buffer.from(await entry.getData(new Uint8ArrayWriter())).toString('utf8'))
  return texts
}

export const manifestOf = (archive: Archive) => JSON.parse(archive.get('company.json') ?? '') as Manifest
export const rowsOf = (archive: Archive, table: string): Record<string, unknown>[] =>
  (archive.get(`json/${table}.jsonl`) ?? '')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as Record<string, unknown>)

/** The tables of an archive, each after those that its rows refer to; a bed's visits are put in last, since visits refer to beds. */
async function parentsFirst(db: pg.Client, tables: string[]): Promise<string[]> {
  const { rows } = await db.query<{ child: string; parent: string }>(
    `select conrelid::regclass::text as child, confrelid::regclass::text as parent from pg_constraint
     where contype = 'f' and connamespace = 'public'::regnamespace and conrelid <> confrelid`,
  )
  const links = rows.filter(({ child, parent }) => !(child === 'bed' && parent === 'visit') && tables.includes(parent))
  const done: string[] = []
  while (done.length < tables.length) {
    const next = tables.find((table) => !done.includes(table) && links.every((one) => one.child !== table || done.includes(one.parent)))
    if (!next) throw new Error(`the tables refer to each other in a circle, after ${done.join(', ')}`)
    done.push(next)
  }
  return done
}

/** Takes an archive into an empty company, at the app's login, so that row security, checks and references hold. Ids stay as they are. */
export async function takeIn(archive: Archive, companyId: string): Promise<void> {
  const app = new pg.Client({ connectionString: (await testDatabase()).appUrl })
  await app.connect()
  try {
    await app.query('begin')
    await app.query(`select set_config('app.company_id', $1, true)`, [companyId])
    const { tables } = manifestOf(archive)
    const columnsOf = new Map(tables.map((one) => [one.name, one.columns]))
    const order = await parentsFirst(
      app,
      tables.map((one) => one.name),
    )
    for (const table of order) {
      const rows = rowsOf(archive, table).map((row) => ({
        ...row,
        company_id: companyId,
        ...(table === 'bed' ? { began_visit_id: null, ended_visit_id: null } : {}),
      }))
      const names = ['company_id', ...(columnsOf.get(table) ?? [])].map((name) => `"${name}"`).join(', ')
      await app.query(`insert into "${table}" (${names}) select ${names} from jsonb_populate_recordset(null::"${table}", $1::jsonb)`, [
        JSON.stringify(rows),
      ])
    }
    await app.query(
      `update bed set began_visit_id = x.began_visit_id, ended_visit_id = x.ended_visit_id
       from jsonb_populate_recordset(null::bed, $1::jsonb) x where bed.company_id = $2 and bed.id = x.id`,
      [JSON.stringify(rowsOf(archive, 'bed')), companyId],
    )
    await app.query('commit')
  } finally {
    await app.end()
  }
}
