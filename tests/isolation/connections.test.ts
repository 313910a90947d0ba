import { appClient, closeClients } from '@almanac/database/client'
import { companyIds, inCompany } from '@almanac/database/in-company'
import { forgetConfig } from '@almanac/runtime/config'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let a: FirmRecords
let b: FirmRecords

beforeAll(async () => {
  db = await inspector()
  await usePool(1)
  a = await makeFirmRecords(db)
  b = await makeFirmRecords(db)
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

/** Opens the app's connections anew, so many of them. */
async function usePool(connections: number): Promise<void> {
  await closeClients()
  process.env.DATABASE_POOL = String(connections)
  forgetConfig()
}

const seen = (companyId: string) =>
  inCompany({ companyId }, async (tx) => (await tx.site.findMany({ select: { companyId: true } })).map((row) => row.companyId))

test('one connection: after company A’s transaction it sees nothing, and no error', async () => {
  expect(await seen(a.companyId)).toEqual([a.companyId])
  expect(await appClient().site.count()).toBe(0)
  // After a scoped transaction the setting is empty and no longer null.
  const [left] = await appClient().$queryRaw<{ setting: string | null }[]>`select current_setting('app.company_id', true) as setting`
  expect(left).toEqual({ setting: '' })
  expect(await seen(b.companyId)).toEqual([b.companyId])
})

test('an aborted transaction leaves neither rows nor its company on the connection', async () => {
  const aborted = inCompany(a, async (tx) => {
    await tx.site.updateMany({ data: { notes: 'never' } })
    await tx.$executeRaw`select 1 / 0`
  })
  await expect(aborted).rejects.toThrow()
  expect(await appClient().site.count()).toBe(0)
  expect(await inCompany(b, (tx) => tx.site.findMany({ select: { companyId: true, notes: true } }))).toEqual([
    { companyId: b.companyId, notes: null },
  ])
  expect(await inCompany(a, (tx) => tx.site.count({ where: { notes: 'never' } }))).toBe(0)
})

test('200 transactions of two companies at once over four connections never see each other, some of them aborted', async () => {
  await usePool(4)
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
  expect(await Promise.all(Array.from({ length: 12 }, () => appClient().site.count()))).toEqual(Array(12).fill(0))
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
