import type { AddPeriodInput } from '@almanac/contract/water'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import type * as z from 'zod'
import { chlorineMgL, enteredOf, hardnessGpg, ironMgL } from './canonical-values.ts'

type AddPeriod = z.infer<typeof AddPeriodInput>

/**
 * Writes what a supply delivers from a day on, as when a town goes from chlorine to chloramine. Every bed on the supply is forecast again in the
 * background; the moves are then shown on the supply's page and in each bed's history.
 */
export async function addPeriod(
  scope: Scope & { personId: string },
  input: AddPeriod,
): Promise<{ periodId: string; bedsToForecast: number }> {
  const { companyId } = scope
  const { waterSupplyId, residual, hardness, iron } = input
  if (input.disinfectant === 'none' && (residual?.value ?? 0) > 0)
    throw new AppError(
      'invalid',
      'A residual is given, but no disinfectant. Nothing was saved; say which disinfectant it is, or leave the residual empty.',
    )
  return runCommand(scope, 'water.add-period', input, async (tx, command) => {
    const supply = await tx.waterSupply.findFirst({ where: { companyId, id: waterSupplyId, archivedAt: null }, select: { id: true } })
    if (!supply) throw notFound('water supply')
    const id = newId()
    await tx.supplyPeriod.create({
      data: {
        companyId,
        id,
        waterSupplyId,
        fromDay: dateOf(input.fromDay),
        disinfectant: input.disinfectant,
        residualMgL: chlorineMgL(residual),
        hardnessGpg: hardnessGpg(hardness),
        ironMgL: ironMgL(iron),
        entered: enteredOf({ residual, hardness, iron }),
        source: input.source,
      },
    })
    const bedsToForecast = await tx.bedForecast.count({ where: { companyId, waterSupplyId } })
    await command.audit('period added', 'water-supply', waterSupplyId, {
      periodId: id,
      fromDay: input.fromDay,
      disinfectant: input.disinfectant,
    })
    await command.announce('water-supply', waterSupplyId)
    await command.enqueue('forecast-company', { waterSupplyId, cause: 'supply' })
    return { periodId: id, bedsToForecast }
  })
}
