import {
  formatCutLengthIn,
  formatFlowGpm,
  formatLengthIn,
  formatTemperatureF,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import { cutHeightIn } from './bed-shapes.ts'
import type { Callout, Dimension, DimensionRole } from './drawing-types.ts'
import type { DrawnBed } from './drawn-bed.ts'

/** Dimension lines and the note on cutting the tube; labels carry value and unit in the reader's system. */
export function bedDimensions(bed: DrawnBed): { dimensions: Dimension[]; callouts: Callout[] } {
  const { shell, display } = bed
  const half = shell.diameterIn / 2
  const height = vertical(
    'tank-height',
    'left',
    -half,
    0,
    shell.heightIn,
    `tank ${formatLengthIn(shell.heightIn, display)}`,
    'without the valve',
  )
  const diameter: Dimension = {
    role: 'tank-diameter',
    side: 'bottom',
    from: { x: -half, y: 0 },
    to: { x: half, y: 0 },
    label: formatLengthIn(shell.diameterIn, display),
    detail: null,
    labelAtIn: 0,
  }
  return { dimensions: [height, ...spreadLabels(rightSide(bed), shell.heightIn), diameter], callouts: [cutCallout(bed)] }
}

function rightSide(bed: DrawnBed): Dimension[] {
  const { shell, levels, expansion, display } = bed
  const x = shell.diameterIn / 2
  const lines: Dimension[] = []
  if (levels.gravelTopIn > shell.bottomIn) {
    lines.push(
      vertical(
        'gravel',
        'right',
        x,
        shell.bottomIn,
        levels.gravelTopIn,
        `gravel ${formatWeightLb(bed.gravelLb, display)}`,
        assumed(bed.gravelBasis),
      ),
    )
  }
  lines.push(
    vertical(
      'bed',
      'right',
      x,
      levels.gravelTopIn,
      levels.bedTopIn,
      `bed ${formatLengthIn(levels.bedTopIn - levels.gravelTopIn, display)}`,
      bedDetail(bed),
    ),
  )
  const risesTo = expansion ? Math.max(expansion.topIn, levels.bedTopIn) : levels.bedTopIn
  if (expansion && risesTo > levels.bedTopIn + 0.05) {
    lines.push(
      vertical(
        'expansion',
        'right',
        x,
        levels.bedTopIn,
        risesTo,
        expansion.overflows ? 'rises to the top in backwash' : 'rises to here in backwash',
        expansionDetail(bed),
      ),
    )
  }
  if (shell.crownIn > risesTo + 0.05) {
    const label = `${formatLengthIn(shell.crownIn - risesTo, display)} ${expansion ? 'to spare' : 'free'}`
    lines.push(vertical('spare', 'right', x, risesTo, shell.crownIn, label, expansion ? null : 'backwash rate not recorded'))
  }
  return lines
}

function bedDetail({ resinFt3, resinBasis, kind, display }: DrawnBed): string {
  const parts = [
    formatVolumeFt3(resinFt3, display),
    kind.shortLabel,
    `${formatWeightLb(resinFt3 * kind.wetWeightLbFt3.value, display)} wet`,
  ]
  const doubt = assumed(resinBasis)
  return doubt === null ? parts.join(', ') : `${parts.join(', ')}; ${doubt}`
}

function assumed(basis: DrawnBed['resinBasis']): string | null {
  if (basis === 'recorded') return null
  return basis === 'label' ? 'from the label' : 'assumed, as usual for this tank'
}

function expansionDetail({ expansion, display }: DrawnBed): string | null {
  if (!expansion) return null
  return `${formatPercent(expansion.share, display)} at ${formatTemperatureF(expansion.temperatureF, display)}, ${formatFlowGpm(expansion.backwashGpm, display)}`
}

function cutCallout(bed: DrawnBed): Callout {
  const length = formatCutLengthIn(bed.tube.lengthIn, bed.display)
  const measured = bed.tube.basis === 'old tube'
  return {
    role: 'tube',
    at: { x: -bed.tubeOutsideDiameterIn / 2, y: cutHeightIn(bed) },
    label: measured ? `cut tube here, ${length}` : `cut tube here, about ${length}`,
    detail: measured ? 'as the old tube, with its basket' : 'match the old tube',
  }
}

function vertical(
  role: DimensionRole,
  side: 'left' | 'right',
  x: number,
  fromY: number,
  toY: number,
  label: string,
  detail: string | null,
): Dimension {
  return { role, side, from: { x, y: fromY }, to: { x, y: toY }, label, detail, labelAtIn: (fromY + toY) / 2 }
}

/** Share of the tank's height that a label of two lines needs. */
const LABEL_ROOM = 0.07

/** Moves labels upwards where lines are so short that two texts would stand on each other; the lines themselves stay where they are. */
function spreadLabels(lines: Dimension[], heightIn: number): Dimension[] {
  let lowest = Number.NEGATIVE_INFINITY
  return lines.map((line) => {
    const labelAtIn = Math.max(line.labelAtIn, lowest)
    lowest = labelAtIn + LABEL_ROOM * heightIn
    return { ...line, labelAtIn }
  })
}
