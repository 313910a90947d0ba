import type { Tx } from '@almanac/database/client'
import type { TankRoom } from '@almanac/service-rules/amounts/judge-in-tank'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import type { AmountDisplay } from '@almanac/units/display'

type Job = { companyId: string; bedId: string | null; softenerId: string | null }

/** What the tank that a job is about holds, as recorded: its bed's, or the softener's only one. Null where that or its size is not known. */
export async function roomOfTank(tx: Tx, { companyId, bedId, softenerId }: Job, display: AmountDisplay): Promise<TankRoom | null> {
  if (!bedId && !softenerId) return null
  const tanks = await tx.tank.findMany({
    where: bedId ? { companyId, beds: { some: { id: bedId } } } : { companyId, softenerId, archivedAt: null },
    select: { diameterIn: true, heightIn: true },
    take: 2,
  })
  const [only, ...others] = tanks
  return only && others.length === 0 ? tankRoom(only.diameterIn, only.heightIn, display) : null
}
