import type { AmountDisplay } from '@almanac/units/display'
import { quoteNumber } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { cToF } from '@almanac/units/temperature'
import { beadsOf, bedExpansion } from '../hydraulics/bed-expansion.ts'
import { waterStateF } from '../hydraulics/water-state.ts'
import { type ResinKind, resinKindOr8 } from '../resin/resin-kinds.ts'
import { type BedLevels, bedLevels, expandedBed } from '../tanks/bed-levels.ts'
import { type TubeLength, tubeLength, tubeOutsideDiameter } from '../tanks/distributor-tube.ts'
import { type FillBasis, fillForTank } from '../tanks/fill-for-tank.ts'
import { checkTankSize, type TankShell, tankShell } from '../tanks/tank-geometry.ts'
import type { BedDrawingInput } from './drawing-types.ts'

/** Everything the drawing shows, worked out; heights in inches above the floor. */
export type DrawnBed = {
  shell: TankShell
  resinFt3: number
  resinBasis: FillBasis
  gravelLb: number
  gravelBasis: FillBasis
  kind: ResinKind
  levels: BedLevels
  expansion: { share: number; topIn: number; overflows: boolean; backwashGpm: number; temperatureF: number } | null
  tube: TubeLength
  tubeOutsideDiameterIn: number
  display: AmountDisplay
  warnings: string[]
}

export function drawnBed(input: BedDrawingInput): Result<DrawnBed> {
  const { diameterIn, heightIn } = input
  if (diameterIn === null || heightIn === null) {
    return refuse('The tank cannot be drawn until its diameter and its height without the valve are known; measure them at the next visit.')
  }
  const wrong = checkTankSize(diameterIn, heightIn)
  if (wrong) return wrong
  const recorded = { diameterIn, heightIn, nominalGrains: input.nominalGrains, resinFt3: input.resinVolumeFt3, gravelLb: input.gravelLb }
  const fill = fillForTank(recorded, input.figures?.tanks)
  if (!fill.ok) return fill
  const shell = tankShell(diameterIn, heightIn)
  const { resinFt3, gravelLb } = fill.value
  const { kind, assumption } = resinKindOr8(input.resinKind)
  const levels = bedLevels(shell, resinFt3, gravelLb)
  const notes = { assumptions: [...fill.assumptions], missing: [...fill.missing], sources: [...fill.sources] }
  if (assumption) notes.assumptions.push(assumption)
  const warnings = [...fill.value.warnings]
  const expansion = expansionOf(input, kind, shell, levels, resinFt3, notes, warnings)
  if (expansion !== null && 'ok' in expansion) return expansion
  const tubeOutsideDiameterIn = usableTube(input.tubeOutsideDiameterIn, diameterIn, notes)
  const tube = tubeLength(shell, input.oldTubeLengthIn)
  if (tube.basis === 'estimate') notes.missing.push('length of the old distributor tube')
  const value = { shell, ...fill.value, kind, levels, expansion, tube, tubeOutsideDiameterIn, display: input.display, warnings }
  return ok(value, notes)
}

type Notes = { assumptions: string[]; missing: string[]; sources: string[] }

function usableTube(recordedIn: number | null | undefined, diameterIn: number, notes: Notes): number {
  const { outsideDiameterIn, assumed } = tubeOutsideDiameter(recordedIn, diameterIn)
  if (assumed)
    notes.assumptions.push(`Distributor tube of ${outsideDiameterIn} in outside diameter assumed, as usual for this tank (from memory).`)
  return outsideDiameterIn
}

function expansionOf(
  input: BedDrawingInput,
  kind: ResinKind,
  shell: TankShell,
  levels: BedLevels,
  resinFt3: number,
  notes: Notes,
  warnings: string[],
): DrawnBed['expansion'] | Extract<Result<never>, { ok: false }> {
  const { backwashGpm } = input
  if (backwashGpm == null) {
    notes.missing.push('installed backwash rate')
    return null
  }
  if (!(backwashGpm >= 0 && backwashGpm < 1000))
    return refuse(`A backwash rate of ${quoteNumber(backwashGpm)} gpm is not possible; check the entry.`)
  const water = waterStateF(input.waterTemperatureF)
  if (!water.ok) return water
  notes.assumptions.push(...water.assumptions)
  notes.missing.push(...water.missing)
  notes.sources.push(...water.sources, input.expansionModel === 'wen-yu' ? 'Wen and Yu 1966' : 'Richardson and Zaki 1954')
  const share = bedExpansion(beadsOf(kind), water.value, backwashGpm / shell.areaFt2, input.expansionModel)
  const { topIn, overflows } = expandedBed(shell, levels, resinFt3, share)
  if (overflows)
    warnings.push(
      'In backwash the bed would rise to the top of the tank and resin would be lost to the drain: check the backwash flow control.',
    )
  return { share, topIn, overflows, backwashGpm, temperatureF: cToF(water.value.temperatureC) }
}
