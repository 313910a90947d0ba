import {
  formatCutLengthIn,
  formatFlowGpm,
  formatLengthIn,
  formatTemperatureF,
  formatVolumeFt3,
  formatWeightLb,
} from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { cutHeightIn } from './bed-shapes.ts'
import type { Callout, DimensionRole, DrawnDimension } from './drawing-types.ts'
import type { DrawnBed } from './drawn-bed.ts'

/** Dimension lines and the note on cutting the tube; labels carry value and unit in the reader's system. */
export function bedDimensions(bed: DrawnBed): { dimensions: DrawnDimension[]; callouts: Callout[] } {
  const { shell, speaking } = bed
  const { display, words } = speaking
  const half = shell.diameterIn / 2
  const height = vertical(
    'tank-height',
    'left',
    -half,
    0,
    shell.heightIn,
    words('draw/height', { length: formatLengthIn(shell.heightIn, display) }),
    words('draw/noValve'),
  )
  const diameter: DrawnDimension = {
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

function rightSide(bed: DrawnBed): DrawnDimension[] {
  const { shell, levels, expansion, speaking } = bed
  const { display, words } = speaking
  const x = shell.diameterIn / 2
  const lines: DrawnDimension[] = []
  if (levels.gravelTopIn > shell.bottomIn) {
    lines.push(
      vertical(
        'gravel',
        'right',
        x,
        shell.bottomIn,
        levels.gravelTopIn,
        words('draw/gravel', { weight: formatWeightLb(bed.gravelLb, display) }),
        assumed(bed.gravelBasis, words),
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
      words('draw/bed', { depth: formatLengthIn(levels.bedTopIn - levels.gravelTopIn, display) }),
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
        words(expansion.overflows ? 'draw/toTop' : 'draw/rises'),
        expansionDetail(bed),
      ),
    )
  }
  if (shell.crownIn > risesTo + 0.05) {
    const label = words(expansion ? 'draw/spare' : 'draw/free', { length: formatLengthIn(shell.crownIn - risesTo, display) })
    lines.push(vertical('spare', 'right', x, risesTo, shell.crownIn, label, expansion ? null : words('draw/noRate')))
  }
  return lines
}

function bedDetail({ resinFt3, resinBasis, kind, speaking: { display, words } }: DrawnBed): string {
  const parts = [
    formatVolumeFt3(resinFt3, display),
    words(`${kind.id}/short`),
    words('draw/wet', { weight: formatWeightLb(resinFt3 * kind.wetWeightLbFt3.value, display) }),
  ]
  const doubt = assumed(resinBasis, words)
  return doubt === null ? parts.join(', ') : `${parts.join(', ')}; ${doubt}`
}

function assumed(basis: DrawnBed['resinBasis'], words: Words<'kit'>): string | null {
  if (basis === 'recorded') return null
  return words(basis === 'label' ? 'draw/fromLabel' : 'draw/assumed')
}

function expansionDetail({ expansion, speaking: { display, words } }: DrawnBed): string | null {
  if (!expansion) return null
  return words('draw/grows', {
    share: formatPercent(expansion.share, display),
    temperature: formatTemperatureF(expansion.temperatureF, display),
    flow: formatFlowGpm(expansion.backwashGpm, display),
  })
}

function cutCallout(bed: DrawnBed): Callout {
  const { words, display } = bed.speaking
  const length = formatCutLengthIn(bed.tube.lengthIn, display)
  const measured = bed.tube.basis === 'old tube'
  return {
    role: 'tube',
    at: { x: -bed.tubeOutsideDiameterIn / 2, y: cutHeightIn(bed) },
    label: words(measured ? 'draw/cut' : 'draw/cutAbout', { length }),
    detail: words(measured ? 'draw/asOld' : 'draw/match'),
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
): DrawnDimension {
  return { role, side, from: { x, y: fromY }, to: { x, y: toY }, label, detail, labelAtIn: (fromY + toY) / 2 }
}

/** Share of the tank's height that a label of two lines needs. */
const LABEL_ROOM = 0.07

/** Moves labels upwards where lines are so short that two texts would stand on each other; the lines themselves stay where they are. */
function spreadLabels(lines: DrawnDimension[], heightIn: number): DrawnDimension[] {
  let lowest = Number.NEGATIVE_INFINITY
  return lines.map((line) => {
    const labelAtIn = Math.max(line.labelAtIn, lowest)
    lowest = labelAtIn + LABEL_ROOM * heightIn
    return { ...line, labelAtIn }
  })
}
