import { formatFlowGpm, formatLengthIn, formatTankSize, formatTemperatureF, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { DrawnBed } from './drawn-bed.ts'

/** The drawing in words, for people who do not see it. */
export function describeDrawing(bed: DrawnBed): string {
  const { shell, levels, expansion, gravelLb, kind, resinFt3 } = bed
  const { display, words } = bed.speaking
  const filled = words('draw/words', {
    size: formatTankSize(shell.diameterIn, shell.heightIn, display),
    volume: formatVolumeFt3(resinFt3, display),
    resin: words(kind.id),
    depth: formatLengthIn(levels.bedTopIn - levels.gravelTopIn, display),
    gravel: gravelLb > 0 ? words('draw/gravelIn', { weight: formatWeightLb(gravelLb, display) }) : words('draw/gravelOut'),
    free: formatLengthIn(levels.freeboardIn, display),
  })
  if (!expansion) return filled
  const backwash = words(expansion.overflows ? 'draw/backwashTop' : 'draw/backwash', {
    flow: formatFlowGpm(expansion.backwashGpm, display),
    temperature: formatTemperatureF(expansion.temperatureF, display),
    share: formatPercent(expansion.share, display),
  })
  return `${filled} ${backwash}`
}
