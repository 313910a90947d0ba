import type { SupplyPeriodRow } from '@almanac/contract/water'
import { disinfectantWords } from '@almanac/records/disinfectant'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg } from '@almanac/units/format'
import { type Amount, enteredIn } from '@/client/amounts'

export const hardnessOf = (amount: Amount | null) => enteredIn(amount, ['gpg', 'mg/L', 'dH', 'fH', 'mmol/L'])
export const concentrationOf = (amount: Amount | null) => enteredIn(amount, ['mg/L', 'ug/L'])

/** The value as typed and, where that was in another unit, as the company reads it. */
export function hardnessWords(
  period: { hardnessGpg: number | null; entered: Record<string, { value: number; unit: string }> },
  display: AmountDisplay,
): string | null {
  if (period.hardnessGpg === null) return null
  const shown = formatHardnessGpg(period.hardnessGpg, display)
  const typed = period.entered.hardness
  return typed && `${typed.value} ${typed.unit}` !== shown && !shown.endsWith(typed.unit)
    ? `${shown} (typed ${typed.value} ${typed.unit})`
    : shown
}

/** "chloramine 2.4 mg/L" */
export function periodWords(period: SupplyPeriodRow): string {
  const word = disinfectantWords[period.disinfectant]
  return period.residualMgL === null ? word : `${word} ${Number(period.residualMgL.toPrecision(3))} mg/L`
}

export const mgL = (value: number | null) => (value === null ? null : `${Number(value.toPrecision(3))} mg/L`)
