import type { CloseOutInput } from '@almanac/contract/visits'
import type { Tx } from '@almanac/database/client'
import type { TankRoom } from '@almanac/service-rules/amounts/judge-in-tank'
import { tankAsFound } from '@almanac/service-rules/close-out/tank-as-found'
import { tankRoom } from '@almanac/softener/tanks/tank-room'
import type { AmountDisplay } from '@almanac/units/display'

type Job = { companyId: string; bedId: string | null; softenerId: string | null }
type Reader = { display: AmountDisplay; checks: CloseOutInput['checks'] }

/** What the tank that a job is about holds, its bed's or the softener's only one: as recorded, or as the crew found it. Null where that or its size is not known. */
export async function roomOfTank(tx: Tx, { companyId, bedId, softenerId }: Job, { display, checks }: Reader): Promise<TankRoom | null> {
  if (!bedId && !softenerId) return null
  const tanks = await tx.tank.findMany({
    where: bedId ? { companyId, beds: { some: { id: bedId } } } : { companyId, softenerId, archivedAt: null },
    select: { diameterIn: true, heightIn: true },
    take: 2,
  })
  const [only, ...others] = tanks
  if (!only || others.length > 0) return null
  const { diameterIn, heightIn } = tankAsFound(only, checks, display.locale)
  return tankRoom(diameterIn, heightIn, display)
}
