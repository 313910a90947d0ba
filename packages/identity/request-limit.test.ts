import { closeClients, identityClient } from '@almanac/database/client'
import { forgetConfig } from '@almanac/runtime/config'
import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { testDatabase } from '../../tests/support/test-database.ts'
import { secondsLeftOfMinute } from '../../tests/support/within-a-minute.ts'
import { countRequest } from './request-limit.ts'

/** The middle of a minute that no other test counts in: a minute that turns meanwhile begins anew. */
const MINUTE = Date.parse('2030-01-01T00:00:30Z')
let turn = 0
let by = ''

const countedFor = async (key: string) => (await identityClient().requestWindow.findUnique({ where: { key } }))?.count ?? 0
const limitTo = (limit: number) => {
  vi.stubEnv('REQUESTS_PER_MINUTE', String(limit))
  forgetConfig()
}
const outcomes = async (requests: number) => {
  const all = await Promise.allSettled(Array.from({ length: requests }, () => countRequest(by)))
  return { let: all.filter((one) => one.status === 'fulfilled').length, refused: all.filter((one) => one.status === 'rejected').length }
}

beforeAll(async () => {
  await testDatabase()
})
beforeEach(() => {
  turn++
  by = `address 10.9.8.${turn}`
  vi.spyOn(Date, 'now').mockReturnValue(MINUTE + turn * 60_000)
})
afterAll(async () => {
  vi.restoreAllMocks()
  vi.unstubAllEnvs()
  forgetConfig()
  await closeClients()
})

test('as many as the limit are let in, however they come, and not one more', async () => {
  limitTo(600)
  expect(await outcomes(597)).toEqual({ let: 597, refused: 0 })
  expect(await outcomes(10)).toEqual({ let: 3, refused: 7 })
  for (let i = 0; i < 3; i++) await expect(countRequest(by)).rejects.toMatchObject({ code: 'rate-limited' })
})

test('two hundred at once cost a statement for ten of them, not one each', async () => {
  limitTo(600)
  expect(await outcomes(200)).toEqual({ let: 200, refused: 0 })
  expect(await countedFor(by)).toBe(200)
  await countRequest(by)
  expect(await countedFor(by)).toBe(210)
})

test('a small limit is kept to the request', async () => {
  limitTo(3)
  expect(await outcomes(5)).toEqual({ let: 3, refused: 2 })
})

test('what another process counted is part of it, and a new minute starts from nothing', async () => {
  limitTo(600)
  // In the database's own minute another process has counted nearly all.
  await secondsLeftOfMinute(10)
  await identityClient().$executeRaw`insert into request_window (key, starts_at, count) values (${by}, date_trunc('minute', now()), 595)`
  expect(await outcomes(10)).toEqual({ let: 5, refused: 5 })
  vi.spyOn(Date, 'now').mockReturnValue(MINUTE + (turn + 100) * 60_000)
  await identityClient().$executeRaw`update request_window set starts_at = starts_at - interval '1 minute' where key = ${by}`
  expect(await outcomes(10)).toEqual({ let: 10, refused: 0 })
})
