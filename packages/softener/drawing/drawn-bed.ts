import { quoteNumber, withUnit } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { cToF } from '@almanac/units/temperature'
import { beadsOf, bedExpansion } from '../hydraulics/bed-expansion.ts'
import { waterStateF } from '../hydraulics/water-state.ts'
import type { Speaking } from '../kit/speaking.ts'
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
  speaking: Speaking
  warnings: string[]
}

export function drawnBed(input: BedDrawingInput): Result<DrawnBed> {
  const { diameterIn, heightIn, words, display } = input
  const speaking = { words, display }
  if (diameterIn === null || heightIn === null) {
    return refuse(words('noSizeToDraw'))
  }
  const wrong = checkTankSize(diameterIn, heightIn, words)
  if (wrong) return wrong
  const recorded = { diameterIn, heightIn, nominalGrains: input.nominalGrains, resinFt3: input.resinVolumeFt3, gravelLb: input.gravelLb }
  const fill = fillForTank(recorded, speaking, input.figures?.tanks)
  if (!fill.ok) return fill
  const shell = tankShell(diameterIn, heightIn)
  const { resinFt3, gravelLb } = fill.value
  const { kind, assumed } = resinKindOr8(input.resinKind)
  const levels = bedLevels(shell, resinFt3, gravelLb)
  const notes = { assumptions: [...fill.assumptions], missing: [...fill.missing], sources: [...fill.sources] }
  if (assumed) notes.assumptions.push(words('resinAssumed'))
  const warnings = [...fill.value.warnings]
  const expansion = expansionOf(input, kind, shell, levels, resinFt3, notes, warnings)
  if (expansion !== null && 'ok' in expansion) return expansion
  const tubeOutsideDiameterIn = usableTube(input.tubeOutsideDiameterIn, diameterIn, notes, speaking)
  const tube = tubeLength(shell, input.oldTubeLengthIn, words)
  if (tube.basis === 'estimate') notes.missing.push(words('missing/tube'))
  const value = { shell, ...fill.value, kind, levels, expansion, tube, tubeOutsideDiameterIn, speaking, warnings }
  return ok(value, notes)
}

type Notes = { assumptions: string[]; missing: string[]; sources: string[] }

function usableTube(recordedIn: number | null | undefined, diameterIn: number, notes: Notes, { words, display }: Speaking): number {
  const { outsideDiameterIn, assumed } = tubeOutsideDiameter(recordedIn, diameterIn)
  if (assumed) notes.assumptions.push(words('tubeAssumedAt', { across: withUnit(outsideDiameterIn, 3, 'in', display) }))
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
  const { backwashGpm, words } = input
  if (backwashGpm == null) {
    notes.missing.push(words('missing/backwash'))
    return null
  }
  if (!(backwashGpm >= 0 && backwashGpm < 1000)) return refuse(words('badBackwash', { value: quoteNumber(backwashGpm) }))
  const water = waterStateF(input.waterTemperatureF, input)
  if (!water.ok) return water
  notes.assumptions.push(...water.assumptions)
  notes.missing.push(...water.missing)
  notes.sources.push(...water.sources, input.expansionModel === 'wen-yu' ? 'Wen and Yu 1966' : 'Richardson and Zaki 1954')
  const share = bedExpansion(beadsOf(kind), water.value, backwashGpm / shell.areaFt2, input.expansionModel)
  const { topIn, overflows } = expandedBed(shell, levels, resinFt3, share)
  if (overflows) warnings.push(words('bedRises'))
  return { share, topIn, overflows, backwashGpm, temperatureF: cToF(water.value.temperatureC) }
}
