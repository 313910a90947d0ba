import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, type Firm, makeFirm, stateOf } from '../imports/test-import.ts'
import { explainBed } from './explain-bed.ts'

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

const explained = async (firm: Firm, bedId: string) => {
  const result = await explainBed(firm, bedId, { locale: 'en-US' })
  return result.ok ? result : expect.unreachable(result.reason)
}

test('a bed whose predecessor ended on 2 Sep 2014 did not begin before it', async () => {
  const firm = await makeFirm()
  await bringIn(firm, 'Name,Street,Town,Tank,Last seen\nAnn Poe,1 Elm St,Lark,10x54,2025-05-01\n')
  const { tanks, beds } = await stateOf(firm)
  const [tank, bed] = [tanks[0] ?? expect.unreachable(), beds[0] ?? expect.unreachable()]
  const alone = await explained(firm, bed.id)
  expect((alone.value.beginning.earliestDay ?? '') < '2014-09-02').toBe(true)
  const ended = { endedEarliest: dateOf('2014-09-02'), endedLatest: dateOf('2014-09-02'), endCause: 'worn' }
  await inCompany(firm, (tx) =>
    tx.bed.create({ data: { companyId: firm.companyId, id: newId(), tankId: tank.id, resinKind: 'unknown', ...ended } }),
  )
  const { value, assumptions } = await explained(firm, bed.id)
  expect(value.beginning.earliestDay).toBe('2014-09-02')
  expect(assumptions).toContain('The bed went in after the one before it came out, on Sep 2, 2014 at the earliest.')
})

test('"rebed 2012, rebed 2018 (failed, beads)" is two ended beds with their causes and dates, and the same list again changes nothing', async () => {
  const list = 'No,Name,Street,Town,Tank,Installed,Notes\n1,Ann Poe,1 Elm St,Lark,10x54,2004,"rebed 2012, rebed 2018 (failed, beads)"\n'
  const firm = await makeFirm()
  await bringIn(firm, list)
  const { beds } = await stateOf(firm)
  const told = beds.map((bed) => [
    dayOf(bed.beganEarliest),
    dayOf(bed.beganLatest),
    dayOf(bed.endedEarliest),
    dayOf(bed.endedLatest),
    bed.endCause,
  ])
  expect(told.sort((a, b) => String(a[0]).localeCompare(String(b[0])))).toEqual([
    ['2004-01-01', '2004-12-31', '2012-01-01', '2012-12-31', 'unknown'],
    ['2012-01-01', '2012-12-31', '2018-01-01', '2018-12-31', 'beads-lost'],
    ['2018-01-01', '2018-12-31', null, null, null],
  ])
  expect((await bringIn(firm, list)).done).toMatchObject({ created: 0, updated: 0, unchanged: 1 })
  expect((await stateOf(firm)).beds).toHaveLength(3)
})

test('the bed’s page says that assumed water is assumed, and no longer once somebody has told', async () => {
  const firm = await makeFirm()
  await bringIn(firm, 'No,Name,Street,Town,Tank,Installed,Water supply\n1,Ann Poe,1 Elm St,Lark,10x54,2012,Lark town\n')
  const { beds, supplies } = await stateOf(firm)
  const whys = async () => (await explained(firm, beds[0]?.id ?? '')).value.exposure.map((one) => [one.disinfectantOrigin, one.why])
  const ASSUMED = 'disinfectant not recorded: free chlorine 0.7 mg/L assumed'
  expect(await whys()).toEqual([['assumed', expect.stringContaining(ASSUMED)]])
  await inCompany(firm, (tx) =>
    tx.supplyPeriod.create({
      data: {
        ...{ companyId: firm.companyId, id: newId(), waterSupplyId: supplies[0]?.id ?? '', fromDay: null },
        ...{ disinfectant: 'chloramine', residualMgL: 2.5, entered: {}, source: 'notice' },
      },
    }),
  )
  expect(await whys()).toEqual([['supply', expect.not.stringContaining('assumed')]])
})
