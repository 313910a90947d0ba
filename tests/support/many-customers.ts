import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import type { FirmRecords } from './two-firms.ts'

/** So many customers more, each with a house, a bed that is due within the usual lead, and a payer who agrees to mail. Answers them in order. */
export async function addManyCustomers(firm: FirmRecords, count: number) {
  const own = { companyId: firm.companyId }
  const houses = Array.from({ length: count }, (_, i) => ({
    ...{ customerId: newId(), contactId: newId(), siteId: newId(), softenerId: newId(), tankId: newId(), bedId: newId() },
    name: `Customer ${i + 1}`,
    email: `customer-${i + 1}@house.example`,
    label: `Weir Road ${i + 1}`,
  }))
  const days = {
    asOfDay: dateOf('2026-12-02'),
    due10Day: dateOf('2026-12-20'),
    due50Day: dateOf('2028-01-01'),
    due90Day: dateOf('2030-01-01'),
  }
  const figures = { computedAt: new Date('2026-12-02T03:00:00Z'), beganMiddleDay: dateOf('2014-03-01'), chance12Months: 0.3 }
  await inCompany(
    firm,
    async (tx) => {
      await tx.customer.createMany({ data: houses.map((one) => ({ ...own, id: one.customerId, name: one.name })) })
      await tx.site.createMany({
        data: houses.map(({ siteId: id, label }) => ({
          ...own,
          id,
          label,
          street: label,
          town: 'Larkmoor',
          waterSupplyId: firm.waterSupplyId,
        })),
      })
      await tx.tenure.createMany({ data: houses.map(({ siteId, customerId }) => ({ ...own, id: newId(), siteId, customerId })) })
      await tx.contact.createMany({
        data: houses.map(({ contactId: id, customerId, siteId, name, email }) => ({
          ...own,
          id,
          customerId,
          siteId,
          name,
          email,
          role: 'payer',
        })),
      })
      const consent = { channel: 'email', granted: true, source: 'call', sinceDay: dateOf('2024-05-01') }
      await tx.consent.createMany({ data: houses.map(({ contactId }) => ({ ...own, id: newId(), contactId, ...consent })) })
      await tx.softener.createMany({ data: houses.map(({ softenerId: id, siteId }) => ({ ...own, id, siteId, label: 'House softener' })) })
      await tx.tank.createMany({
        data: houses.map(({ tankId: id, softenerId }) => ({ ...own, id, softenerId, diameterIn: 10, heightIn: 54 })),
      })
      const began = { beganEarliest: dateOf('2014-03-01'), beganLatest: dateOf('2014-03-01') }
      await tx.bed.createMany({ data: houses.map(({ bedId: id, tankId }) => ({ ...own, id, tankId, ...began })) })
      const lists = { monthChances: new Uint8Array(), drivers: [], assumptions: [], missing: [] }
      await tx.bedForecast.createMany({
        data: houses.map(({ bedId, siteId }) => ({
          ...{ ...own, id: newId(), bedId, siteId, waterSupplyId: firm.waterSupplyId, runId: firm.runId },
          ...{ ...days, ...figures, ...lists },
        })),
      })
    },
    { timeoutMs: 60_000 },
  )
  return houses
}
