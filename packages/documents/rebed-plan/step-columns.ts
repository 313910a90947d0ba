import type { Ask, ProcedureStep } from '@almanac/softener/procedure/procedure-types'
import type { AmountDisplay } from '@almanac/units/display'
import type { Words } from '@almanac/words/words'
import { LEADING } from '../print/printed.tsx'
import { textLines } from '../print/text-lines.ts'

/** A step as paper shows it. */
export type PaperStep = {
  number: number
  title: string
  minutes: number
  brief: string
  cautions: { word: string; text: string }[]
  /** What is written down by hand: "Hardness at the valve outlet ______ gpg". */
  blanks: string[]
}

const METRIC: Readonly<Record<string, string>> = { gpg: 'mg/L', in: 'mm', ft3: 'L', lb: 'kg', psi: 'bar' }
const US: Readonly<Record<string, string>> = { ft3: 'ft³' }

/** A place to write something down by hand, with its unit in the reader's system. */
export function blankFor(label: string, unit: Ask['unit'], display: AmountDisplay): string {
  const shown = unit === null ? '' : ` ${(display.unitSystem === 'metric' ? METRIC : US)[unit] ?? unit}`
  return `${label} _______${shown}.`
}

/** Steps as paper shows them: the brief text, every caution, and a blank for each number that must be recorded. */
export function paperSteps(
  steps: readonly ProcedureStep[],
  briefs: Readonly<Record<string, string>>,
  display: AmountDisplay,
  hazards: Words<'hazard'>,
): PaperStep[] {
  return steps.map((step, i) => ({
    number: i + 1,
    title: step.title,
    minutes: step.minutes,
    brief: briefs[step.id] ?? step.text,
    // What to stop at stands in its own box above all steps.
    cautions: step.cautions
      .filter((caution) => !(step.id === 'stop-and-refer' && caution.kind === 'refer'))
      .map((caution) => ({ word: hazards(caution.kind), text: caution.text })),
    blanks: step.asks.filter((ask) => ask.kind === 'number' && ask.required).map((ask) => blankFor(ask.label, ask.unit, display)),
  }))
}

/** Room of a step beside its texts: the box to tick; and of a caution: its bar. Points. */
export const STEP = { box: 15, bar: 6, minutes: 30, above: 1.5, below: 2, rule: 0.4 } as const

/** How high a step stands in a column, points. Widths are taken a little wide, so that a line more is counted rather than one less. */
function stepHeight(step: PaperStep, fontSize: number, columnWidth: number): number {
  const width = (columnWidth - STEP.box) * 0.985
  const lines = (text: string, room: number) => textLines(text, fontSize, room)
  const cautions = step.cautions.length === 0 ? 0 : lines(cautionText(step), width - STEP.bar)
  const title = textLines(`${step.number}  ${step.title}`, fontSize * 1.07, width - STEP.minutes)
  const whole = title + cautions + lines(bodyText(step), width)
  return whole * fontSize * LEADING + STEP.above + STEP.below + STEP.rule
}

/** All cautions of a step as they run on. */
const cautionText = (step: PaperStep): string => step.cautions.map(({ word, text }) => `${word}: ${text}`).join(' ')
/** The step's text with what is written down at it. */
export const bodyText = (step: PaperStep): string => [step.brief, ...step.blanks].join(' ')

/** Sizes tried, largest first, points. */
const FONT_SIZES = [11, 10.8, 10.6, 10.4, 10.2, 10, 9.8, 9.6, 9.4, 9.2, 9, 8.8, 8.6, 8.4, 8.2, 8, 7.8, 7.6, 7.4] as const

/** The largest type at which the steps stand in so many columns of the height given, and what stands in each. */
export function setColumns(
  steps: readonly PaperStep[],
  columnWidth: number,
  columnHeights: readonly number[],
): { fontSize: number; columns: PaperStep[][] } {
  for (const fontSize of FONT_SIZES) {
    const columns = fill(steps, columnHeights, (step) => stepHeight(step, fontSize, columnWidth))
    if (columns) return { fontSize, columns }
  }
  const each = Math.ceil(steps.length / columnHeights.length)
  const columns = columnHeights.map((_, i) => steps.slice(i * each, (i + 1) * each))
  return { fontSize: FONT_SIZES[FONT_SIZES.length - 1] ?? 7.4, columns }
}

/** The steps in their order, column after column; null where they need more room. */
function fill(steps: readonly PaperStep[], heights: readonly number[], heightOf: (step: PaperStep) => number): PaperStep[][] | null {
  const columns: PaperStep[][] = heights.map(() => [])
  let at = 0
  let used = 0
  for (const step of steps) {
    const height = heightOf(step)
    while (used + height > (heights[at] ?? 0)) {
      at += 1
      used = 0
      if (at >= heights.length) return null
    }
    columns[at]?.push(step)
    used += height
  }
  return columns
}
