import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import type { BedDrawing } from '@almanac/softener/drawing/drawing-types'
import { bagsFor } from '@almanac/softener/kit/compare-kits'
import type { RebedKit } from '@almanac/softener/kit/kit-types'
import { type PricedKit, priceKit } from '@almanac/softener/kit/price-kit'
import { rebedKit } from '@almanac/softener/kit/rebed-kit'
import type { Procedure } from '@almanac/softener/procedure/procedure-types'
import { rebedBriefs } from '@almanac/softener/procedure/rebed-briefs'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import type { PlanFacts } from './plan-facts.ts'

/** Everything the two sheets show, worked out. Where the tank's size is not known, drawing and kit hold the sentence that says so. */
export type Plan = {
  facts: PlanFacts
  drawing: { ok: true; value: BedDrawing } | { ok: false; reason: string }
  kit: { ok: true; value: RebedKit; priced: PricedKit } | { ok: false; reason: string }
  procedure: Procedure
  /** Each step in a line or two, by its id. */
  briefs: Record<string, string>
  /** What is assumed or not known, each once. */
  notes: string[]
}

/** Works out drawing, kit with prices, and steps. Never refuses: a crew needs its steps whatever is known. */
export function makePlan(facts: PlanFacts): Plan {
  const { unitSystem, figures, tank, valve, resinKind, water } = facts
  const input = {
    diameterIn: tank.diameterIn,
    heightIn: tank.heightIn,
    nominalGrains: tank.nominalGrains,
    resinVolumeFt3: facts.resinVolumeFt3,
    resinKind,
    gravelLb: facts.gravelLb,
    tubeOutsideDiameterIn: valve?.tubeOdIn ?? null,
    oldTubeLengthIn: facts.tubeCutIn,
    valve: valve?.card ?? null,
    figures,
    unitSystem,
  }
  const kit = rebedKit({ ...input, bagSizes: bagsFor(input, facts.shelf, resinKind ?? 'gel-8') })
  const drawing = drawBed({
    ...input,
    tubeOutsideDiameterIn: kit.ok ? kit.value.tubeOutsideDiameterIn : input.tubeOutsideDiameterIn,
    backwashGpm: valve?.backwashGpm ?? null,
    waterTemperatureF: water.temperatureC === null ? null : water.temperatureC * 1.8 + 32,
  })
  const context = {
    diameterIn: tank.diameterIn,
    heightIn: tank.heightIn,
    resinVolumeFt3: facts.resinVolumeFt3,
    resinKind,
    gravelLb: facts.gravelLb,
    newTubeLengthIn: kit.ok ? kit.value.tubeLengthIn : null,
    oldTubeLengthIn: facts.tubeCutIn,
    waterSource: water.source,
    ironMgL: water.ironMgL,
    figures,
    unitSystem,
  }
  const procedure = rebedProcedure(context)
  const assumed = [...(kit.ok ? [...kit.value.warnings, ...kit.assumptions] : []), ...procedure.assumptions]
  return {
    facts,
    drawing: drawing.ok ? { ok: true, value: drawing.value } : drawing,
    kit: kit.ok ? { ok: true, value: kit.value, priced: priceKit(kit.value, facts.prices) } : kit,
    procedure,
    briefs: rebedBriefs(context),
    notes: [...new Set([...(drawing.ok ? drawing.value.warnings : []), ...assumed])],
  }
}
