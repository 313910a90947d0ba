import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readPooledFits } from '@almanac/database/read/pooled-fits'
import pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let app: pg.Client
let a: FirmRecords
let b: FirmRecords
let c: FirmRecords

const choose = (firm: FirmRecords, on: boolean) =>
  db.query('update company_settings set pool_fits = $2 where company_id = $1', [firm.companyId, on])
const share = (firm: FirmRecords, figures: object) =>
  db.query('update forecast_fit set shared = $2 where company_id = $1', [firm.companyId, JSON.stringify(figures)])
const given = (firm: FirmRecords) => inCompany(firm, (tx) => readPooledFits(tx, firm.companyId))
/** The function itself at the app's login, past the code that asks for the setting first. */
async function asked(companyId: string | null): Promise<unknown[]> {
  await app.query('begin')
  if (companyId) await app.query(`select set_config('app.company_id', $1, true)`, [companyId])
  const { rows } = await app.query<{ figures: unknown }>('select almanac_pooled_fits() as figures')
  await app.query('commit')
  return rows.map((row) => row.figures)
}

beforeAll(async () => {
  db = await inspector()
  app = new pg.Client({ connectionString: (await testDatabase()).appUrl })
  await app.connect()
})
beforeEach(async () => {
  await db.query('update company_settings set pool_fits = false')
  a = await makeFirmRecords(db)
  b = await makeFirmRecords(db)
  c = await makeFirmRecords(db)
  await share(a, { of: 'a' })
  await share(b, { of: 'b' })
  await share(c, { of: 'c' })
})
afterAll(async () => {
  await closeClients()
  await app.end()
  await db.end()
})

describe('figures of fits between firms', () => {
  test.each([
    ['nobody', [false, false, false], [[], [], []]],
    ['one', [true, false, false], [[], [], []]],
    ['two of three', [true, true, false], [[{ of: 'b' }], [{ of: 'a' }], []]],
    [
      'all',
      [true, true, true],
      [
        [{ of: 'b' }, { of: 'c' }],
        [{ of: 'a' }, { of: 'c' }],
        [{ of: 'a' }, { of: 'b' }],
      ],
    ],
  ])('%s takes part: each gets what the others gave, and only those who take part', async (_who, takes, expected) => {
    const firms = [a, b, c]
    for (const [i, firm] of firms.entries()) await choose(firm, takes[i] ?? false)
    for (const [i, firm] of firms.entries()) {
      expect(await given(firm)).toEqual({ optedIn: takes[i], others: expected[i] })
      expect(await asked(firm.companyId)).toEqual(expected[i])
    }
  })

  test('without a company in scope there is nothing', async () => {
    for (const firm of [a, b, c]) await choose(firm, true)
    expect(await asked(null)).toEqual([])
  })

  test('the transaction that asked stays in its own company', async () => {
    await choose(a, true)
    await choose(b, true)
    await inCompany(a, async (tx) => {
      await readPooledFits(tx, a.companyId)
      expect(await tx.forecastFit.findMany({ select: { companyId: true } })).toEqual([{ companyId: a.companyId }])
      expect(await tx.companySettings.updateMany({ where: { companyId: b.companyId }, data: { poolFits: false } })).toEqual({ count: 0 })
    })
    expect((await given(a)).others).toEqual([{ of: 'b' }])
  })
})
