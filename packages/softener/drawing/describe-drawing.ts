import { formatFlowGpm, formatLengthIn, formatTankSize, formatTemperatureF, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { DrawnBed } from './drawn-bed.ts'

/** The drawing in words, for people who do not see it. */
export function describeDrawing(bed: DrawnBed): string {
  const { shell, levels, expansion, display } = bed
  const size = formatTankSize(shell.diameterIn, shell.heightIn, display)
  const gravel = bed.gravelLb > 0 ? `over ${formatWeightLb(bed.gravelLb, display)} of gravel` : 'without gravel'
  const filled = `${formatVolumeFt3(bed.resinFt3, display)} of ${bed.kind.label}, ${formatLengthIn(levels.bedTopIn - levels.gravelTopIn, display)} deep, ${gravel}`
  const free = `${formatLengthIn(levels.freeboardIn, display)} free above the bed`
  const backwash = expansion
    ? ` In backwash at ${formatFlowGpm(expansion.backwashGpm, display)} and ${formatTemperatureF(expansion.temperatureF, display)} the bed grows by ${formatPercent(expansion.share, display)}${expansion.overflows ? ' and reaches the top' : ''}.`
    : ''
  return `Tank ${size} with ${filled}; ${free}.${backwash}`
}
