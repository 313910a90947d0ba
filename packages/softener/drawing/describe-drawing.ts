import {
  formatFlowGpm,
  formatLengthIn,
  formatPercent,
  formatTankSize,
  formatTemperatureF,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import type { DrawnBed } from './drawn-bed.ts'

/** The drawing in words, for people who do not see it. */
export function describeDrawing(bed: DrawnBed): string {
  const { shell, levels, expansion, unitSystem: system } = bed
  const size = formatTankSize(shell.diameterIn, shell.heightIn, system)
  const gravel = bed.gravelLb > 0 ? `over ${formatWeightLb(bed.gravelLb, system)} of gravel` : 'without gravel'
  const filled = `${formatVolumeFt3(bed.resinFt3, system)} of ${bed.kind.label}, ${formatLengthIn(levels.bedTopIn - levels.gravelTopIn, system)} deep, ${gravel}`
  const free = `${formatLengthIn(levels.freeboardIn, system)} free above the bed`
  const backwash = expansion
    ? ` In backwash at ${formatFlowGpm(expansion.backwashGpm, system)} and ${formatTemperatureF(expansion.temperatureF, system)} the bed grows by ${formatPercent(expansion.share)}${expansion.overflows ? ' and reaches the top' : ''}.`
    : ''
  return `Tank ${size} with ${filled}; ${free}.${backwash}`
}
