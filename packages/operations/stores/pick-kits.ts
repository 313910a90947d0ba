import type { PickKitsInput } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

/** Says that the kits and materials of a day sheet are on the vehicle. What is picked already stays so; answers how many lines were. */
export async function pickKits(scope: Scope & { personId: string }, input: PickKitsInput): Promise<{ lines: number }> {
  return runCommand(scope, 'stores.pick-kits', input, async (tx, command) => {
    const { companyId } = scope
    const sheet = await tx.crewDay.findUnique({ where: { companyId_id: { companyId, id: input.crewDayId } }, select: { id: true } })
    if (!sheet) throw notFound('day sheet')
    const { count } = await tx.kitReservation.updateMany({
      where: { companyId, state: 'reserved', visit: { crewDayId: sheet.id, state: { in: ['booked', 'under-way'] } } },
      data: { state: 'picked', version: { increment: 1 } },
    })
    const materials = await tx.materialLine.updateMany({
      where: { companyId, state: 'reserved', job: { visits: { some: { crewDayId: sheet.id, state: { in: ['booked', 'under-way'] } } } } },
      data: { state: 'picked', version: { increment: 1 } },
    })
    const lines = count + materials.count
    await command.audit('picked', 'crew-day', sheet.id, { lines })
    await command.announce('crew-day', sheet.id)
    return { lines }
  })
}
