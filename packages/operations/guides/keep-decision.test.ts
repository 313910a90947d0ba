import type { KeepDecision } from '@almanac/contract/bed-choice'
import { closeClients } from '@almanac/database/client'
import { readDecisions } from '@almanac/database/read/guides'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { makeBed, makeFirm } from '../jobs/test-firm.ts'
import { keepDecision } from './keep-decision.ts'

let firm: Awaited<ReturnType<typeof makeFirm>>
let bedId: string

/** A house where an owner may do it: level, a helper, a bypass that holds, 55 psi, no law against it, nothing to stop for. */
const EASY: KeepDecision['told'] = {
  ...{ access: 'level', helper: true, hasBypass: true, bypassHolds: true, valveNeedsPower: true },
  ...{ metalPipe: false, lawAllows: true, stopCase: false, pressurePsi: 55 },
}
const keep = (told: Partial<KeepDecision['told']>, verdict: KeepDecision['verdict'], law = 'Township: allowed in one’s own house') =>
  keepDecision(firm, { commandId: newId(), bedId, told: { ...EASY, ...told }, verdict, law })
const kept = () => readDecisions(firm, bedId, () => 'Ruth')

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T18:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  bedId = (await makeBed(firm)).bedId
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('go or no-go for an owner alone', () => {
  test('is kept with its reasons and the law, the last first', async () => {
    await keep({ helper: false }, 'firm', '')
    await keep({}, 'owner-with-helper')
    const [last, first] = await kept()
    expect(last).toMatchObject({ verdict: 'owner-with-helper', law: 'Township: allowed in one’s own house', by: 'Ruth' })
    expect(last?.reasons.join(' ')).toMatch(/Full, the tank weighs/)
    expect(first).toMatchObject({ verdict: 'firm', law: null })
    expect(first?.reasons[0]).toMatch(/One person alone cannot do it/)
  })

  test('to go needs what the law says; to leave it to the crew does not', async () => {
    await expect(keep({}, 'owner-with-helper', '')).rejects.toThrow(/what the law is here/)
    await keep({ lawAllows: false }, 'firm', '')
    expect(await kept()).toHaveLength(1)
  })

  test('is worked out from the record: a page that says otherwise keeps nothing', async () => {
    await expect(keep({ access: 'stairs' }, 'owner-with-helper')).rejects.toMatchObject({ code: 'conflict' })
    await expect(keep({ pressurePsi: null }, 'owner-with-helper')).rejects.toMatchObject({ code: 'conflict' })
    expect(await kept()).toEqual([])
  })

  test('of another company’s bed is about none', async () => {
    const other = await makeBed(await makeFirm())
    await expect(
      keepDecision(firm, { commandId: newId(), bedId: other.bedId, told: EASY, verdict: 'firm', law: '' }),
    ).rejects.toMatchObject({ code: 'not-found' })
  })
})
