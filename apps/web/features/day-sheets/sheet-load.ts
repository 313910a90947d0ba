import type { DaySheet } from '@almanac/contract/day-sheets'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import type { RebedFirm } from '@almanac/softener/rebed/rebed-of-record'
import { formatVolumeFt3, formatWeightLb } from '@almanac/units/format'

/** What the day's rebeds put on the vehicle: ft³ and lb to carry out in the morning. `unknown` counts rebeds whose kit cannot be made up. */
export function sheetLoad(
  sheet: { visits: readonly Pick<DaySheet['visits'][number], 'kind' | 'bed'>[] },
  firm: RebedFirm,
): { volumeFt3: number; weightLb: number; unknown: number } {
  const load = { volumeFt3: 0, weightLb: 0, unknown: 0 }
  for (const { kind, bed } of sheet.visits) {
    if (kind !== 'rebed') continue
    const kit = bed ? kitOf(bed, firm) : null
    if (!kit?.ok) load.unknown += 1
    else {
      load.volumeFt3 += kit.value.loadVolumeFt3
      load.weightLb += kit.value.loadWeightLb
    }
  }
  return load
}

/** "load 2½ ft³ of 8 ft³, 131 lb of 900 lb", and whether it is more than the vehicle takes. */
export function loadWords(sheet: DaySheet, firm: RebedFirm): { words: string; over: boolean } {
  const { display } = firm
  const { volumeFt3, weightLb, unknown } = sheetLoad(sheet, firm)
  if (!sheet.vehicle) return { words: 'no vehicle', over: false }
  const { vehicle } = sheet
  const nothing = volumeFt3 === 0 && weightLb === 0
  const carried = nothing
    ? `nothing to carry, room for ${formatVolumeFt3(vehicle.volumeFt3, display)}`
    : `load ${formatVolumeFt3(Math.round(volumeFt3 * 10) / 10, display)} of ${formatVolumeFt3(vehicle.volumeFt3, display)}, ${formatWeightLb(weightLb, display)} of ${formatWeightLb(vehicle.weightLb, display)}`
  return {
    words: unknown > 0 ? `${carried}, ${unknown} not known` : carried,
    over: volumeFt3 > vehicle.volumeFt3 || weightLb > vehicle.weightLb,
  }
}
