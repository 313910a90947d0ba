import { closeClients, openClient } from '@almanac/database/client'
import { companyIds, inCompany } from '@almanac/database/in-company'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let a: FirmRecords
let b: FirmRecords

beforeAll(async () => {
  db = await inspector()
  // Fewer connections than transactions, so that each is used again and again by both companies.
  process.env.DATABASE_POOL = '4'
  a = await makeFirmRecords(db)
  b = await makeFirmRecords(db)
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

const seen = (companyId: string) =>
  inCompany({ companyId }, async (tx) => (await tx.site.findMany({ select: { companyId: true } })).map((row) => row.companyId))

test('one connection: after company A’s transaction it sees nothing, and no error', async () => {
  const one = openClient((await testDatabase()).appUrl, 1)
  try {
    const pid = () => one.$queryRaw<{ pid: number }[]>`select pg_backend_pid() as pid`
    const before = await pid()
    const inA = await one.$transaction(async (tx) => {
      await tx.$executeRaw`select set_config('app.company_id', ${a.companyId}, true)`
      return tx.site.count()
    })
    expect(inA).toBe(1)
    expect(await one.site.count()).toBe(0)
    const [left] = await one.$queryRaw<{ setting: string | null }[]>`select current_setting('app.company_id', true) as setting`
    expect(left?.setting ?? '').toBe('')
    expect(await pid()).toEqual(before)
  } finally {
    await one.$disconnect()
  }
})

test('an aborted transaction leaves neither rows nor its company on the connection', async () => {
  const one = openClient((await testDatabase()).appUrl, 1)
  try {
    const aborted = one.$transaction(async (tx) => {
      await tx.$executeRaw`select set_config('app.company_id', ${a.companyId}, true)`
      await tx.site.updateMany({ data: { notes: 'never' } })
      await tx.$executeRaw`select 1 / 0`
    })
    await expect(aborted).rejects.toThrow()
    expect(await one.site.count()).toBe(0)
    const inB = await one.$transaction(async (tx) => {
      await tx.$executeRaw`select set_config('app.company_id', ${b.companyId}, true)`
      return tx.site.findMany({ select: { companyId: true, notes: true } })
    })
    expect(inB).toEqual([{ companyId: b.companyId, notes: null }])
  } finally {
    await one.$disconnect()
  }
  expect(await inCompany(a, (tx) => tx.site.count({ where: { notes: 'never' } }))).toBe(0)
})

test('200 transactions of two companies at once over four connections never see each other, some of them aborted', async () => {
  const work = Array.from({ length: 200 }, async (_, turn) => {
    const { companyId } = turn % 2 ? a : b
    if (turn % 5 === 0)
      return inCompany({ companyId }, async (tx) => {
        await tx.site.count()
        throw new Error('planned')
      }).catch((error: Error) => (error.message === 'planned' ? [companyId] : Promise.reject(error)))
    return seen(companyId)
  })
  const answers = await Promise.all(work)
  for (const [turn, companies] of answers.entries()) expect(companies).toEqual([(turn % 2 ? a : b).companyId])
})

test('without a proper company nothing runs at all', async () => {
  for (const companyId of ['', 'null', `${a.companyId}' or true`, undefined as unknown as string]) {
    let ran = false
    await expect(inCompany({ companyId }, async () => (ran = true))).rejects.toMatchObject({ code: 'unexpected' })
    expect(ran).toBe(false)
  }
  await expect(inCompany(a, async (tx) => tx.site.count())).resolves.toBe(1)
})

test('the nightly look across companies gives ids and nothing more', async () => {
  expect((await companyIds()).sort()).toEqual([a.companyId, b.companyId].sort())
})
