import { type IsoDay, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { bedClock } from '../bed-forecast/bed-clock.ts'
import { readInspections } from '../bed-forecast/inspection-model.ts'
import { sayingOf } from '../exposure/speaking.ts'
import { hermiteNodes } from '../numeric/gauss-hermite.ts'
import { uniformNodes } from '../numeric/gauss-nodes.ts'
import type { ForecastParameters, LifeModel, SupplyEffect, SupplyEffects } from '../priors/forecast-parameters.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import type { BedRecord } from './bed-record.ts'
import { SPREAD_PRIOR } from './choose-models.ts'
import { type ReadRecord, readRecord } from './read-record.ts'

/** Points over a supply's possible effects. */
const POINTS = 21

/**
 * What inspections of a supply's beds, above all graded samples of beds taken out, say of its other beds: a bed found more worn than its age and water explain
 * means that beds there last less. Moves the supply's effect by Bayes at the central parameters, at once and without a fit; records of failed beds are left out,
 * since a fit learns more from their life than a sample could tell. Returns `parameters` itself where no record says anything.
 */
export function learnFromSamples(parameters: ForecastParameters, records: readonly BedRecord[], asOfDay: IsoDay): ForecastParameters {
  const asOf = parseDay(asOfDay)
  if (asOf === null) return parameters
  const bySupply = new Map<string, BedRecord[]>()
  for (const record of records) {
    const { supply, inspections = [] } = record
    if (supply === null || supply === undefined || inspections.length === 0 || record.end?.cause === 'failed') continue
    bySupply.set(supply, [...(bySupply.get(supply) ?? []), record])
  }
  const supplies = effectsAfter(parameters, bySupply, asOfDay, asOf)
  if (supplies === null) return parameters
  // A further model that found effects of its own learns by them.
  const alternatives = parameters.alternatives?.map((model): LifeModel => {
    if (model.supplies === undefined) return model
    const { alternatives: _others, ...shared } = parameters
    return { ...model, supplies: effectsAfter({ ...shared, ...model }, bySupply, asOfDay, asOf) ?? model.supplies }
  })
  return { ...parameters, version: `${parameters.version}+samples`, supplies, ...(alternatives ? { alternatives } : {}) }
}

/** The supplies' effects of one model after the readings; null where they say nothing. */
function effectsAfter(
  model: ForecastParameters,
  bySupply: ReadonlyMap<string, BedRecord[]>,
  asOfDay: IsoDay,
  asOf: number,
): SupplyEffects | null {
  const spread = model.supplies?.spread ?? Math.exp(SPREAD_PRIOR.logMean)
  const known = new Map((model.supplies?.known ?? []).map((effect) => [effect.supply, effect]))
  let moved = false
  for (const [supply, own] of bySupply) {
    const before = known.get(supply) ?? { supply, mean: 0, sd: spread, slope: model.logMean.map(() => 0) }
    const after = updated(before, own, model, asOfDay, asOf)
    if (after === null) continue
    known.set(supply, after)
    moved = true
  }
  return moved ? { spread, known: [...known.values()] } : null
}

/** The effect after the readings: mean and spread of belief × likelihood at Gauss–Hermite points of what was believed. */
function updated(
  before: SupplyEffect,
  records: readonly BedRecord[],
  parameters: ForecastParameters,
  asOfDay: IsoDay,
  asOf: number,
): SupplyEffect | null {
  const read: { bed: ReadRecord; inspections: NonNullable<ReturnType<typeof readInspections>> }[] = []
  for (const record of records) {
    const bed = readRecord(record, asOfDay, parameters)
    const inspections = readInspections(record.inspections ?? [], (day) => {
      const number = day === null ? null : parseDay(day)
      return number === null || number > asOf ? null : number
    })
    if (bed.ok && inspections !== null) read.push({ bed, inspections })
  }
  if (read.length === 0) return null
  const points = hermiteNodes(POINTS).map(({ x, weight }) => {
    const effect = before.mean + Math.SQRT2 * before.sd * x
    return {
      effect,
      log: Math.log(weight) - x * x + read.reduce((sum, one) => sum + evidence(one.bed, one.inspections, effect, parameters), 0),
    }
  })
  const top = Math.max(...points.map(({ log }) => log))
  const total = points.reduce((sum, { log }) => sum + Math.exp(log - top), 0)
  const mean = points.reduce((sum, { effect, log }) => sum + effect * Math.exp(log - top), 0) / total
  const square = points.reduce((sum, { effect, log }) => sum + (effect - mean) ** 2 * Math.exp(log - top), 0) / total
  const sd = Math.sqrt(square)
  // What is learned here does not move with the parameters; the rest does as before.
  const rest = (sd / before.sd) ** 2
  return { ...before, mean, sd, slope: before.slope.map((slope) => slope * rest) }
}

/** ln chance of the readings, given that the bed worked on the day it was last known to. */
function evidence(
  bed: ReadRecord,
  inspections: NonNullable<ReturnType<typeof readInspections>>,
  effect: number,
  parameters: ForecastParameters,
): number {
  const node = { ...centralValues(parameters), supplyLog: () => effect }
  const first = bed.beginnings[0]?.x ?? bed.lower
  const last = bed.beginnings.at(-1)?.x ?? first
  const clock = bedClock(
    {
      ok: true,
      asOf: bed.lower,
      earliest: first,
      latest: last,
      backDays: Number.POSITIVE_INFINITY,
      lastSeen: bed.lower,
      lastSeenKnown: true,
      unheardUntil: null,
      crosslinkKnown: true,
      traits: bed.traits,
      supply: null,
      writeDay: isoDay,
      segments: bed.segments,
      assumptions: [],
      missing: [],
      saying: sayingOf(undefined),
    },
    { beginnings: uniformNodes(first, last, first === last ? 1 : 4), doseLogSd: 0 },
    node,
    inspections,
  )
  // Components' chances of the readings, each by its belief before them.
  const tilts = clock.tilts ?? []
  const logs = tilts.map((tilt) => tilt.logEvidence)
  const top = Math.max(...logs)
  const shares = tilts.map((tilt, i) => (clock.weight[i] as number) * Math.exp(top - tilt.logEvidence))
  // weight ∝ belief · e^evidence, so that belief ∝ weight · e^−evidence.
  const beliefs = shares.reduce((sum, share) => sum + share, 0)
  return top - Math.log(beliefs)
}
