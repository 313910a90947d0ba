import type { ResinKindId } from '@almanac/records/resin-kind'
import { COMMON_PRACTICE, DATA_SHEET, FROM_MEMORY, type Sourced } from '@almanac/units/sourced'

/** What a resin's data sheet says, as far as the calculations need it. Sizes are of beads wetted and backwashed. */
export type ResinKind = {
  readonly id: ResinKindId
  readonly totalCapacityEqL: Sourced
  readonly wetWeightLbFt3: Sourced
  readonly particleDensityKgM3: Sourced
  readonly meanDiameterMm: Sourced
  readonly smallestBeadMm: Sourced
  readonly packedVoidage: Sourced
  readonly maxTemperatureF: Sourced
}

const sheet = (value: number, unit: string): Sourced => ({ value, unit, basis: 'typical data sheet', source: DATA_SHEET })
const memory = (value: number, unit: string): Sourced => ({ value, unit, basis: 'from memory', source: FROM_MEMORY })
/** A bed of standard beads packs at about 0.38 voids. */
const voidage: Sourced = { value: 0.38, unit: '', basis: 'common practice', source: COMMON_PRACTICE }

export const RESIN_KINDS: Readonly<Record<ResinKindId, ResinKind>> = {
  'gel-8': {
    id: 'gel-8',
    totalCapacityEqL: sheet(2.0, 'eq/L'),
    wetWeightLbFt3: sheet(51, 'lb/ft³'),
    particleDensityKgM3: sheet(1280, 'kg/m³'),
    meanDiameterMm: sheet(0.65, 'mm'),
    smallestBeadMm: sheet(0.3, 'mm'),
    packedVoidage: voidage,
    maxTemperatureF: memory(110, '°F'),
  },
  'gel-10': {
    id: 'gel-10',
    totalCapacityEqL: sheet(2.1, 'eq/L'),
    wetWeightLbFt3: sheet(53, 'lb/ft³'),
    particleDensityKgM3: memory(1300, 'kg/m³'),
    meanDiameterMm: sheet(0.65, 'mm'),
    smallestBeadMm: sheet(0.3, 'mm'),
    packedVoidage: voidage,
    maxTemperatureF: memory(110, '°F'),
  },
  'fine-mesh': {
    id: 'fine-mesh',
    totalCapacityEqL: sheet(2.0, 'eq/L'),
    wetWeightLbFt3: sheet(51, 'lb/ft³'),
    particleDensityKgM3: sheet(1280, 'kg/m³'),
    meanDiameterMm: memory(0.45, 'mm'),
    smallestBeadMm: memory(0.25, 'mm'),
    packedVoidage: voidage,
    maxTemperatureF: memory(110, '°F'),
  },
}

/** The kind, or 8% gel where none is recorded; `assumed` says so. */
export function resinKindOr8(id: ResinKindId | null | undefined): { kind: ResinKind; assumed: boolean } {
  const assumed = id === null || id === undefined
  return { kind: RESIN_KINDS[assumed ? 'gel-8' : id], assumed }
}
