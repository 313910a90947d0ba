import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inspector, makeCompany } from '../../../tests/support/two-firms.ts'
import { closeClients } from '../client.ts'
import { Prisma } from '../generated/client.ts'
import { inCompany } from '../in-company.ts'
import { endOfPrefix, siteSearchSql } from './site-search.ts'
import { readSites } from './sites-list.ts'

/** Enough that reading everything would cost more than the index, in a company of its own and one beside it. */
const SITES = 3000
let db: pg.Client
let mine: { companyId: string }

beforeAll(async () => {
  db = await inspector()
  for (const name of ['one', 'two']) {
    const companyId = await makeCompany(db, name)
    if (name === 'one') mine = { companyId }
    await db.query(
      `insert into site (company_id, id, label) select $1, gen_random_uuid(), 'Lane ' || lpad(n::text, 5, '0') from generate_series(1, $2) n`,
      [companyId, SITES],
    )
    await db.query(
      `insert into search_token (company_id, token, site_id)
       select company_id, t, id from site, lateral (values ('lane'), ('ane'), (right(label, 5)), ('w' || substr(md5(label), 1, 6)), ('x' || substr(md5(label), 7, 6))) v (t)
       where company_id = $1`,
      [companyId],
    )
  }
  await db.query('analyze site')
  await db.query('analyze search_token')
})
afterAll(async () => {
  await db.end()
  await closeClients()
})

describe('finding sites under row security', () => {
  test('looks each term up in the token index, at the app’s own login', async () => {
    const plan = await inCompany(mine, async (tx) => {
      const [who] = await tx.$queryRaw<
        { bypass: boolean }[]
      >`select rolbypassrls or rolsuper as bypass from pg_roles where rolname = current_user`
      expect(who?.bypass).toBe(false)
      const sql = siteSearchSql({ ...mine, terms: [['0123'], ['lan']], after: null, limit: 51 })
      const rows = await tx.$queryRaw<{ 'QUERY PLAN': string }[]>(Prisma.sql`explain (costs off) ${sql}`)
      return rows.map((row) => row['QUERY PLAN']).join('\n')
    })
    expect(plan).not.toMatch(/Seq Scan on search_token/)
    // The range of the term stands in the index condition; under row security a comparison that is not leakproof would end in a filter.
    expect(plan).toMatch(/Index Cond: .*token >= '0123'.*token < '0124'/)
  })

  test('pages through all matches once, in order, and through none of the other company’s', async () => {
    const labels: string[] = []
    let cursor: string | undefined
    do {
      const page = await readSites(mine, { terms: ['lane'], limit: 200, cursor })
      labels.push(...page.rows.map((row) => row.label))
      cursor = page.nextCursor ?? undefined
    } while (cursor)
    expect(labels).toHaveLength(SITES)
    expect(labels).toEqual([...labels].sort())
  })

  test('a single letter narrows what the longer terms found', async () => {
    const { rows } = await readSites(mine, { terms: ['0123', 'l'], limit: 50 })
    // Numbers stand here as whole words, so those that begin with 0123 are 01230 to 01239.
    expect(rows.map((row) => row.label)).toEqual([
      'Lane 01230',
      'Lane 01231',
      'Lane 01232',
      'Lane 01233',
      'Lane 01234',
      'Lane 01235',
      'Lane 01236',
      'Lane 01237',
      'Lane 01238',
      'Lane 01239',
    ])
    expect((await readSites(mine, { terms: ['0123', 'q'], limit: 50 })).rows).toEqual([])
  })

  test('a cursor that this list did not make is refused in a sentence', async () => {
    const foreign = Buffer.from(JSON.stringify([5, newId()])).toString('base64url')
    for (const cursor of ['%%%', foreign])
      await expect(readSites(mine, { terms: [], limit: 5, cursor })).rejects.toMatchObject({ code: 'invalid' })
  })

  test.each([
    ['ab', 'ac'],
    ['9', ':'],
    ['a\ud7ff', 'a\ue000'],
  ])('the texts that begin with %o end before %o', (prefix, end) => {
    expect(endOfPrefix(prefix)).toBe(end)
  })
})
