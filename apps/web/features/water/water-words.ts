import type { SupplyPeriodRow } from '@almanac/contract/water'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg } from '@almanac/units/format'
import { type NumberDisplay, showNumber } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { type Amount, enteredIn } from '@/client/amounts'

type WaterWords = Words<'water'>

export const hardnessOf = (amount: Amount | null) => enteredIn(amount, ['gpg', 'mg/L', 'dH', 'fH', 'mmol/L'])
export const concentrationOf = (amount: Amount | null) => enteredIn(amount, ['mg/L', 'ug/L'])

/** The value as typed and, where that was in another unit, as the company reads it. */
export function hardnessWords(
  period: { hardnessGpg: number | null; entered: Record<string, { value: number; unit: string }> },
  display: AmountDisplay,
  words: WaterWords,
): string | null {
  if (period.hardnessGpg === null) return null
  const shown = formatHardnessGpg(period.hardnessGpg, display)
  const { hardness } = period.entered
  const typed = hardness && `${showNumber(hardness.value, 6, display)} ${hardness.unit}`
  return typed && typed !== shown && !shown.endsWith(hardness.unit) ? words('typed', { value: shown, typed }) : shown
}

/** "chloramine 2.4 mg/L" */
export function periodWords(period: SupplyPeriodRow, display: NumberDisplay, words: WaterWords): string {
  const word = words(`is/${period.disinfectant}`)
  return period.residualMgL === null ? word : `${word} ${mgL(period.residualMgL, display)}`
}

export const mgL = (value: number | null, display: NumberDisplay) =>
  value === null ? null : `${showNumber(Number(value.toPrecision(3)), 6, display)} mg/L`
