import type { Tx } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { rewriteSiteTokens } from '../../packages/operations/shared/site-tokens.ts'
import type { PlannedFirm } from './plan-firm.ts'
import type { Rows } from './rows.ts'

const CHUNK = 1000

type Table = { createMany: (input: { data: never[] }) => Promise<unknown> }

async function insert(tx: Tx, rows: Record<string, unknown[]>): Promise<void> {
  for (const [table, list] of Object.entries(rows))
    for (let start = 0; start < list.length; start += CHUNK)
      await (tx[table as keyof Tx] as unknown as Table).createMany({ data: list.slice(start, start + CHUNK) as never[] })
}

/** Writes one firm in one transaction: all of it or nothing. The company's own row comes last, elsewhere, and makes it visible. */
export async function loadFirm(companyId: string, { colleague, vehicle, rows, sheets, stores }: PlannedFirm): Promise<void> {
  const { bed, waterTest, inspection, job, ...places } = rows
  await inCompany(
    { companyId },
    async (tx) => {
      await insert(tx, {
        colleague,
        vehicle,
        ...{ customer: places.customer, waterSupply: places.waterSupply, supplyPeriod: places.supplyPeriod },
      })
      await insert(tx, { site: places.site, contact: places.contact, consent: places.consent, tenure: places.tenure })
      await insert(tx, { softener: places.softener, tank: places.tank, valve: places.valve, preTreatment: places.preTreatment })
      // Beds name the visits that began and ended them, visits name jobs, jobs name beds: the beds go in first and learn their visits after.
      await insert(tx, {
        bed: bed.map(({ beganVisitId: _began, endedVisitId: _ended, ...one }) => one),
        waterTest,
        inspection,
        job,
        ...sheets,
        ...stores,
      })
      await linkVisits(tx, companyId, bed)
      await rewriteSiteTokens(
        tx,
        companyId,
        places.site.map((site) => site.id),
      )
    },
    { timeoutMs: 900_000 }, // three minutes were too few on a machine that was busy with other work
  )
}

async function linkVisits(tx: Tx, companyId: string, beds: Rows['bed']): Promise<void> {
  for (const { id, beganVisitId, endedVisitId } of beds)
    if (beganVisitId || endedVisitId)
      await tx.bed.update({
        where: { companyId_id: { companyId, id } },
        data: { beganVisitId: beganVisitId ?? undefined, endedVisitId: endedVisitId ?? undefined },
      })
}
