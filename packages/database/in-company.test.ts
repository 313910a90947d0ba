import { setImmediate as nextTurn } from 'node:timers/promises'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { inspector, makeFirmRecords } from '../../tests/support/two-firms.ts'
import { closeClients } from './client.ts'
import { inCompany } from './in-company.ts'

let db: Awaited<ReturnType<typeof inspector>>
beforeAll(async () => {
  db = await inspector()
})
afterAll(async () => {
  await closeClients()
  await db.end()
})

/** Several relations of one row: Prisma asks for them at the same time, and a transaction has one connection. */
const nested = { tank: { include: { softener: true, valves: true } }, inspections: true, jobs: true, forecast: true } as const

test('relations read together inside a transaction warn of nothing that the next driver refuses', async () => {
  const warnings: string[] = []
  const hear = (warning: Error) => warnings.push(`${warning.name}: ${warning.message}`)
  process.on('warning', hear)
  const { companyId, bedId, softenerId, inspectionId } = await makeFirmRecords(db)
  const bed = await inCompany({ companyId }, (tx) => tx.bed.findFirstOrThrow({ where: { companyId, id: bedId }, include: nested }))
  await nextTurn() // a warning is told a turn later
  process.off('warning', hear)
  expect(bed.tank.softener?.id).toBe(softenerId)
  expect(bed.inspections.map(({ id }) => id)).toEqual([inspectionId])
  expect(warnings).toEqual([])
})

test('a query that fails among others sent with it ends the transaction: nothing of it is kept', async () => {
  const { companyId, siteId, bedId } = await makeFirmRecords(db)
  const where = { companyId_id: { companyId, id: siteId } }
  const label = async () => (await db.query('select label from site where id = $1', [siteId])).rows[0].label
  const before = await label()
  const broken = inCompany({ companyId }, async (tx) => {
    await tx.site.update({ where, data: { label: 'Elsewhere' } })
    return Promise.all([
      tx.bed.findFirstOrThrow({ where: { companyId, id: bedId }, include: nested }),
      tx.$queryRaw`select 1 / 0`,
      tx.site.update({ where, data: { town: 'Nowhere' } }),
    ])
  })
  await expect(broken).rejects.toThrow()
  expect(await label()).toBe(before)
  // The connection goes back to the pool sound.
  await expect(inCompany({ companyId }, (tx) => tx.bed.findFirst({ where: { companyId, id: bedId } }))).resolves.toMatchObject({
    id: bedId,
  })
})
