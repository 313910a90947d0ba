import type { OrderKit } from '@almanac/contract/guides'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { openJobStates } from '@almanac/records/job-state'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type { RebedKit } from '@almanac/softener/kit/kit-types'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { kitOfBed } from '../shared/reserve-kit.ts'
import { proposeIn } from './propose-job.ts'

/** A crew brings its cap and takes it home; an owner has none. */
const forOwner = (kit: RebedKit): RebedKit => ({
  ...kit,
  lines: kit.lines.map((line) => (line.item === 'tube-cap' ? { ...line, toReturn: false } : line)),
})

/**
 * Adds a delivery with the kit of a bed's rebed set aside, to be collected or shipped to an owner who may do it alone. What the stores don't keep stands in its notes, and is answered.
 */
export async function orderKit(scope: Scope & { personId: string }, input: OrderKit): Promise<{ jobId: string; notKept: string[] }> {
  return runCommand(scope, 'jobs.order-kit', input, async (tx, command) => {
    const { companyId } = scope
    const { bedId, way } = input
    const bed = await tx.bed.findFirst({
      where: { companyId, id: bedId, endedLatest: null, archivedAt: null },
      select: {
        tank: { select: { softener: { select: { siteId: true } } } },
        decisions: { orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 1, select: { verdict: true } },
      },
    })
    const siteId = bed?.tank.softener?.siteId
    if (!bed || !siteId) throw notFound('bed in service')
    if (bed.decisions[0]?.verdict !== 'owner-with-helper')
      throw new AppError('conflict', 'Nobody has kept a go for this bed. Nothing was ordered; keep the answer first.')
    const open = { companyId, bedId, kind: 'delivery', state: { in: [...openJobStates] } }
    if ((await tx.job.count({ where: open })) > 0)
      throw new AppError('conflict', 'A kit for this bed is on a delivery already. Nothing was ordered; change that job.')
    const kit = await kitOfBed(tx, companyId, bedId)
    if (!kit)
      throw new AppError('conflict', 'The tank’s size isn’t known, so neither is its kit. Nothing was ordered; measure the tank first.')
    const items = await tx.stockItem.findMany({ where: { companyId, archivedAt: null }, orderBy: { id: 'asc' } })
    const { taken, notKept } = takeFromStores(forOwner(kit), items)
    const lacking = notKept.map((line) => line.text)
    const notes = lacking.length > 0 ? `Not in the stores: ${lacking.join('; ')}` : undefined
    const { jobId } = await proposeIn(tx, command, { siteId, bedId, kind: 'delivery', askedFor: { by: 'kit', way }, notes })
    await tx.materialLine.createMany({
      data: taken.map(({ item, quantity }) => ({ companyId, id: newId(), jobId, stockItemId: item.id, quantity, state: 'reserved' })),
    })
    if (taken.length > 0) await command.announce('kit', jobId)
    await command.audit('kit ordered', 'bed', bedId, { jobId, way })
    return { jobId, notKept: lacking }
  })
}
