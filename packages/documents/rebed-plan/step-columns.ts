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

function blankOf(ask: Ask, display: AmountDisplay): string {
  const unit = ask.unit === null ? '' : ` ${(display.unitSystem === 'metric' ? METRIC : US)[ask.unit] ?? ask.unit}`
  return `${ask.label} _______${unit}.`
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
    blanks: step.asks.filter((ask) => ask.kind === 'number' && ask.required).map((ask) => blankOf(ask, display)),
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
const FONT_SIZES = [9.4, 9.2, 9, 8.8, 8.6, 8.4, 8.2, 8.1, 8, 7.9, 7.8, 7.7, 7.6, 7.5, 7.4, 7.2, 7] as const

/** The largest type at which the steps stand in two columns of the height given, and where the second column begins. */
export function setColumns(steps: readonly PaperStep[], columnWidth: number, columnHeight: number): { fontSize: number; splitAt: number } {
  let smallest = { fontSize: FONT_SIZES[FONT_SIZES.length - 1] ?? 7.5, splitAt: Math.ceil(steps.length / 2) }
  for (const fontSize of FONT_SIZES) {
    const heights = steps.map((step) => stepHeight(step, fontSize, columnWidth))
    const whole = heights.reduce((sum, height) => sum + height, 0)
    let before = 0
    let best = { splitAt: 0, higher: whole }
    heights.forEach((height, i) => {
      before += height
      const higher = Math.max(before, whole - before)
      if (higher < best.higher) best = { splitAt: i + 1, higher }
    })
    smallest = { fontSize, splitAt: best.splitAt }
    if (best.higher <= columnHeight) return smallest
  }
  return smallest
}
