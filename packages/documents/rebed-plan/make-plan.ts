import type { BedDrawing } from '@almanac/softener/drawing/drawing-types'
import type { RebedKit } from '@almanac/softener/kit/kit-types'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { rebedBriefs } from '@almanac/softener/procedure/rebed-briefs'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { drawingOf } from '@almanac/softener/rebed/drawing-of-record'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { procedureContextOf } from '@almanac/softener/rebed/rebed-of-record'
import { twinName } from '@almanac/softener/tanks/twin-name'
import type { Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'
import type { PlanFacts } from './plan-facts.ts'

/** Everything the three sheets show, worked out. Where the tank's size is not known, drawing and kit hold the sentence that says so. */
export type MadePlan = {
  /** What the sheets say, in the language of the display. */
  words: Words<'plan'>
  hazards: Words<'hazard'>
  asks: Words<'asks'>
  paper: 'LETTER' | 'A4'
  facts: PlanFacts
  drawing: { ok: true; value: BedDrawing } | { ok: false; reason: string }
  kit: { ok: true; value: RebedKit } | { ok: false; reason: string }
  procedure: Procedure
  /** Each step in a line or two, by its id. */
  briefs: Record<string, string>
  /** Which of several tanks, in words; null for a softener of one. */
  tank: string | null
  /** What is assumed or not known, each once. */
  notes: string[]
}

/** Works out drawing, kit and steps. Never refuses: a crew needs its steps whatever is known. */
export function makePlan(facts: PlanFacts): MadePlan {
  const { bed, water, figures, display } = facts
  const words = {
    steps: wordsIn(display.locale, 'steps'),
    cautions: wordsIn(display.locale, 'cautions'),
    asks: wordsIn(display.locale, 'asks'),
    beadCondition: wordsIn(display.locale, 'beadCondition'),
    kit: wordsIn(display.locale, 'kit'),
  }
  const firm = { figures, display, words: words.kit }
  const kit = kitOf(bed, firm)
  const drawing = drawingOf(bed, water, firm)
  const context = procedureContextOf(bed, water, firm, { twin: facts.twin, emptied: facts.emptied !== null })
  const procedure = rebedProcedure(context, words)
  const assumed = [...(kit.ok ? [...kit.value.warnings, ...kit.assumptions] : []), ...procedure.assumptions]
  return {
    words: wordsIn(display.locale, 'plan'),
    hazards: wordsIn(display.locale, 'hazard'),
    asks: words.asks,
    paper: facts.paper === 'a4' ? 'A4' : 'LETTER',
    facts,
    drawing: drawing.ok ? { ok: true, value: drawing.value } : drawing,
    kit: kit.ok ? { ok: true, value: kit.value } : kit,
    procedure,
    tank: facts.twin && twinName(facts.twin, firm),
    briefs: rebedBriefs(context, words),
    notes: [...new Set([...(drawing.ok ? drawing.value.warnings : []), ...assumed])],
  }
}
