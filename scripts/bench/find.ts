import { closeClients } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import { tokensFor } from '@almanac/service-rules/search/search-tokens'
import pg from 'pg'
import { lookUp } from '../../packages/operations/search/look-up.ts'
import { table } from './load/table.ts'
import { quantile, round } from './load/timing.ts'

type Bench = { args: string[]; say: (line: string) => void; openDatabase: () => Promise<{ superUrl: string }> }

const FIRST =
  'Hester Fergus Rufus Thea Silas Wilf Cecil Ida Nell Otto Selma Wren Ines Tomas Petra Joss Ruth Callum Amara Dell Marian Niamh Orla Piers'
const LAST =
  'Vance Moreau Lockyer Heath Eastman Redfern Norcott Garland Kemble Drury Takeda Oakes Prior Reyes Calder Ames Brand Vale Orr Tully Ashby Roe'
const STREETS =
  'Sluice Brook Foundry Quarry Wellhead Cistern Orchard Plover Willow Millrace Tannery Cooper Weir Lime Spring Alder Hollow Station Chapel'
const KINDS = 'Road Street Lane Drive Gardens Row Bend Rise'
const SIZES = ['8x44', '9x48', '10x44', '10x54', '12x52', '14x65']
const pick = (words: string, n: number) => words.split(' ')[n % words.split(' ').length] ?? ''
const number = (n: number) => `(555) ${String(100 + (n % 900)).padStart(3, '0')}-${String((n * 7919) % 10_000).padStart(4, '0')}`

const QUERIES = [
  ['a name', 'garland'],
  ['name and street', 'hester sluice'],
  ['first letters', 'mo'],
  ['an address', '168 cooper street'],
  ['a town', 'mill 12'],
  ['a number', number(31_337)],
  ['a tank', '14x65'],
  ['a slip', 'graland'],
  ['two slips', 'hesetr slucie'],
  ['a slip in a number', number(31_337).replace(/(\d)(\d)$/, '$2$1')],
  ['nothing like it', 'zzqqzzqq'],
] as const

/** `--sites N` or `--sites=N`. */
function size(args: string[], name: string, usual: number): number {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  const found = args[at]
  const value = found === undefined ? usual : Number(found.includes('=') ? found.slice(name.length + 3) : args[at + 1])
  if (!Number.isInteger(value) || value < 1)
    throw new Error(`--${name} must be a whole number from 1 on. Usage: npm run bench -- find [--${name} ${usual}]`)
  return value
}

/** A firm of so many sites, each with its customer, number and tank; its words are those the app would write. */
async function addFirm(db: pg.Client, name: string, sites: number): Promise<string> {
  const companyId = newId()
  await db.query("insert into company (id, name, time_zone, unit_system, currency) values ($1, $2, 'America/Chicago', 'us', 'USD')", [
    companyId,
    name,
  ])
  const CHUNK = 2000
  for (let from = 0; from < sites; from += CHUNK) {
    const rows = Array.from({ length: Math.min(CHUNK, sites - from) }, (_, i) => from + i).map((n) => ({
      n,
      ids: Array.from({ length: 7 }, newId),
      person: `${pick(FIRST, n * 5)} ${pick(LAST, Math.floor(n / 7))}`,
      street: `${pick(STREETS, n * 3)} ${pick(KINDS, Math.floor(n / 5))} ${1 + (n % 240)}`,
      town: `Mill ${n % 40}`,
      phone: number(n),
      size: SIZES[n % SIZES.length] ?? '',
    }))
    await db.query('begin')
    await db.query(
      `create temp table r on commit drop as select r.*, string_to_array(size, 'x')::float[] as inches
       from jsonb_to_recordset($1::jsonb) r (ids uuid[], person text, street text, town text, phone text, size text)`,
      [JSON.stringify(rows)],
    )
    for (const statement of [
      'insert into site (company_id, id, label, street, town) select $1, ids[1], street, street, town from r',
      'insert into customer (company_id, id, name) select $1, ids[2], person from r',
      'insert into tenure (company_id, id, site_id, customer_id) select $1, ids[3], ids[1], ids[2] from r',
      "insert into contact (company_id, id, customer_id, role, name, phone) select $1, ids[4], ids[2], 'payer', person, phone from r",
      "insert into softener (company_id, id, site_id, label) select $1, ids[5], ids[1], 'Softener' from r",
      'insert into tank (company_id, id, softener_id, diameter_in, height_in, size_as_written) select $1, ids[6], ids[5], inches[1], inches[2], size from r',
      'insert into bed (company_id, id, tank_id) select $1, ids[7], ids[6] from r',
    ])
      await db.query(statement, [companyId])
    const pairs = rows.flatMap((row) =>
      tokensFor([row.street, row.town, row.person, row.size], [row.phone]).map((token) => [token, row.ids[0] ?? ''] as const),
    )
    await db.query(
      'insert into search_token (company_id, token, site_id) select $1, token, site from unnest($2::text[], $3::uuid[]) t (token, site)',
      [companyId, pairs.map(([token]) => token), pairs.map(([, site]) => site)],
    )
    await db.query('commit')
  }
  return companyId
}

/** The four slips of quick fingers, in the middle of a word: two letters swapped, one left out, one doubled, one beside it struck. */
const SLIPS: Readonly<Record<string, (word: string) => string>> = {
  swapped: (word) => `${word.slice(0, 2)}${word[3]}${word[2]}${word.slice(4)}`,
  missing: (word) => `${word.slice(0, 2)}${word.slice(3)}`,
  doubled: (word) => `${word.slice(0, 3)}${word.slice(2)}`,
  another: (word) => `${word.slice(0, 2)}${word[2] === 'x' ? 'z' : 'x'}${word.slice(3)}`,
}

/** How many of the long names and streets are still found with each slip in them, of how many. */
async function forgiven(companyId: string) {
  const words = [...LAST.split(' '), ...STREETS.split(' ')].filter((word) => word.length >= 5)
  return Promise.all(
    Object.entries(SLIPS).map(async ([slip, make]) => {
      let found = 0
      for (const word of words) {
        const { findings } = await lookUp({ companyId }, make(word.toLowerCase()))
        if (findings.some((one) => JSON.stringify(one).includes(word))) found++
      }
      return { slip, found, of: words.length }
    }),
  )
}

/** The one search in a firm of `--sites=50000`, beside another as large: at one and at ten at a time, wall and processor time. */
export default async function find({ args, say, openDatabase }: Bench) {
  const sites = size(args, 'sites', 50_000)
  const { superUrl } = await openDatabase()
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  await addFirm(db, 'Beside', sites)
  const companyId = await addFirm(db, 'Bench firm', sites)
  await db.query('vacuum analyze')
  const tokens = (await db.query<{ n: number }>('select count(*)::int as n from search_token')).rows[0]?.n ?? 0
  say(`${sites} sites in each of two firms, ${tokens} words`)
  await db.end()
  const measured = []
  for (const [what, query] of QUERIES) {
    const found = (await lookUp({ companyId }, query)).findings.length
    const once = async () => {
      const begun = performance.now()
      await lookUp({ companyId }, query)
      return performance.now() - begun
    }
    const cpu = process.cpuUsage()
    const one: number[] = []
    for (let n = 0; n < 60; n++) one.push(await once())
    const used = process.cpuUsage(cpu)
    const ten: number[] = []
    await Promise.all(
      Array.from({ length: 10 }, async () => {
        for (let n = 0; n < 12; n++) ten.push(await once())
      }),
    )
    const at = (all: number[], share: number) =>
      round(
        quantile(
          [...all].sort((a, b) => a - b),
          share,
        ),
      )
    measured.push({
      what,
      query,
      found,
      p50: at(one, 0.5),
      p95: at(one, 0.95),
      cpu: round((used.user + used.system) / 60_000),
      ten95: at(ten, 0.95),
    })
  }
  const header = ['search', 'typed', 'found', 'p50 ms', 'p95 ms', 'processor ms', '10: p95']
  console.log(
    table(
      `The one search, ${sites} sites`,
      header,
      measured.map((one) => [one.what, one.query, one.found, one.p50, one.p95, one.cpu, one.ten95]),
    ),
  )
  const slips = await forgiven(companyId)
  console.log(
    table(
      'Found all the same, with one slip in the word',
      ['slip', 'found', 'of'],
      slips.map((one) => [one.slip, one.found, one.of]),
    ),
  )
  await closeClients()
  return { sites, tokens, measured, slips }
}
