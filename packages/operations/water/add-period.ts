import type { AddPeriodInput } from '@almanac/contract/water'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { IN_SERVICE } from '@almanac/database/read/in-service'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { asBefore, periodBefore } from '@almanac/service-rules/water/supply-change'
import { enteredOf } from '../shared/check-amounts.ts'
import { checkWater, hardnessGpg, inMgL } from './canonical-values.ts'

type Typed = { value: number; unit: string }
type Values = { residual: number | null; hardness: number | null; iron: number | null }

const NAMES = ['residual', 'hardness', 'iron'] as const

/** The entry that holds until the change, as this change sees it. */
async function before(tx: Tx, companyId: string, { waterSupplyId, fromDay, disinfectant }: AddPeriodInput) {
  const periods = await tx.supplyPeriod.findMany({ where: { companyId, waterSupplyId, withdrawnAt: null } })
  const found = periodBefore(
    periods.map((period) => ({ ...period, fromDay: dayOf(period.fromDay) })),
    fromDay,
  )
  // How much there was of one disinfectant says nothing of another.
  const goesOn = disinfectant === undefined || disinfectant === found?.disinfectant
  return {
    disinfectant: found?.disinfectant ?? 'unknown',
    temperatureC: found?.temperatureC ?? null,
    residual: goesOn ? (found?.residualMgL ?? null) : null,
    hardness: found?.hardnessGpg ?? null,
    iron: found?.ironMgL ?? null,
    entered: (found?.entered ?? {}) as Record<string, Typed | undefined>,
  }
}

function checkTold(input: AddPeriodInput, disinfectant: string, residual: number | null): void {
  const { hardness, iron } = input
  if ([input.disinfectant, input.residual, hardness, iron].every((told) => told === undefined))
    throw new AppError('invalid', 'You entered no value, so nothing was saved. Enter what changed; blanks stay as before.')
  if (disinfectant === 'none' && (residual ?? 0) > 0)
    throw new AppError(
      'invalid',
      'You entered a residual but no disinfectant. Nothing was saved; choose the disinfectant, or leave the residual blank.',
    )
}

/**
 * Writes what a supply delivers from a day on, as when a town goes from chlorine to chloramine. What the change leaves out is as before, and is not known
 * only where it says so (null). Every bed on the supply is forecast again in the background; the moves are then shown on the supply's page and in each
 * bed's history. 400 where a value cannot be right or nothing is told, 409 where an entry starts on that day.
 */
export async function addPeriod(
  scope: Scope & { personId: string },
  input: AddPeriodInput,
): Promise<{ periodId: string; bedsToForecast: number }> {
  const { companyId } = scope
  const { waterSupplyId, residual, hardness, iron } = input
  const { residual: sentResidual, hardness: sentHardness, iron: sentIron, why } = input
  checkWater({ residual: sentResidual ?? undefined, hardness: sentHardness ?? undefined, iron: sentIron ?? undefined, why })
  return runCommand(scope, 'water.add-period', input, async (tx, command) => {
    // Two changes of one supply stand in line, so that the later one is told against the earlier.
    await lockRows(tx, companyId, 'water_supply', [waterSupplyId])
    const supply = await tx.waterSupply.findFirst({ where: { companyId, id: waterSupplyId, archivedAt: null }, select: { id: true } })
    if (!supply) throw notFound('water supply')
    const was = await before(tx, companyId, input)
    const disinfectant = asBefore(input.disinfectant, was.disinfectant) ?? 'unknown'
    const values: Values = {
      residual: residual ? inMgL(residual) : asBefore(residual, was.residual),
      hardness: hardness ? hardnessGpg(hardness) : asBefore(hardness, was.hardness),
      iron: iron ? inMgL(iron) : asBefore(iron, was.iron),
    }
    checkTold(input, disinfectant, values.residual)
    const carried = NAMES.filter((name) => input[name] === undefined && values[name] !== null)
    const typed = Object.fromEntries(NAMES.map((name) => [name, carried.includes(name) ? was.entered[name] : (input[name] ?? undefined)]))
    const id = newId()
    await tx.supplyPeriod.create({
      data: {
        companyId,
        id,
        waterSupplyId,
        fromDay: dateOf(input.fromDay),
        disinfectant,
        residualMgL: values.residual,
        hardnessGpg: values.hardness,
        ironMgL: values.iron,
        temperatureC: was.temperatureC,
        entered: enteredOf(typed, input.why),
        source: carried.length > 0 ? `${input.source}; ${carried.join(', ')} as before` : input.source,
      },
    })
    const bedsToForecast = await tx.bedForecast.count({ where: { companyId, waterSupplyId, bed: IN_SERVICE } })
    await command.audit('period added', 'water-supply', waterSupplyId, { periodId: id, fromDay: input.fromDay, disinfectant })
    await command.announce('water-supply', waterSupplyId)
    await command.enqueue('forecast-company', { waterSupplyId, cause: 'supply' })
    return { periodId: id, bedsToForecast }
  })
}
