import type { BedFactChanges } from '@almanac/contract/beds'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { readTankSize } from '../shared/read-typed-facts.ts'

export type TankOfBed = { companyId: string; tank: { id: string; version: number; factSources: unknown } }
type Current = (version: number) => () => Promise<{ version: number }>

/** Sets a tank's size as it was written, with what could be read of it. */
export async function changeTankSize(
  tx: Tx,
  change: { bed: TankOfBed; tankSize: string; version: number; from: string; facts: BedFactChanges; current: Current },
): Promise<void> {
  const { companyId, tank } = change.bed
  const size = readTankSize(change.tankSize)
  const { tankSize: _, ...otherSources } = tank.factSources as Record<string, string>
  const { count } = await tx.tank.updateMany({
    where: { companyId, id: tank.id, version: change.version },
    data: {
      diameterIn: size?.diameterIn ?? null,
      heightIn: size?.heightIn ?? null,
      nominalGrains: size?.nominalGrains ?? null,
      sizeAsWritten: change.tankSize || null,
      factSources: size ? { ...otherSources, tankSize: change.from } : otherSources,
      version: { increment: 1 },
    },
  })
  await expectChanged(count, 'tank', change.version, change.facts, change.current(tank.version))
}
