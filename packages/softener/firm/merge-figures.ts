import type { FigureOverride, FirmFigures } from './firm-figures.ts'
import { setFigure } from './read-figure.ts'
import { USUAL_FIGURES } from './usual-figures.ts'

export type MergedFigures = { figures: FirmFigures; refused: { key: string; reason: string }[] }

/**
 * The usual figures with a firm's own in their places. One that cannot stand is left out, so that the usual one holds, and is named with
 * the reason. Total: any key and value gives figures without a NaN.
 */
export function mergeFigures(overrides: readonly FigureOverride[]): MergedFigures {
  let figures = USUAL_FIGURES
  const refused: MergedFigures['refused'] = []
  for (const { key, value } of overrides) {
    const set = setFigure(figures, key, value)
    if (set.ok) figures = set.figures
    else refused.push({ key, reason: `${set.reason} The default counts.` })
  }
  return { figures, refused }
}
