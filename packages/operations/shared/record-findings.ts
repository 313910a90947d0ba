import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import type { BeadCondition } from '@almanac/records/bead-condition'
import { sourceOn } from '@almanac/records/fact-source'
import type { MeasurementKind } from '@almanac/records/measurement-kind'
import type { MeasuringPoint } from '@almanac/records/measuring-point'
import { newId } from '@almanac/runtime/ids'
import type { Measurement } from '@almanac/service-rules/close-out/close-out-form'
import { enteredOf } from './check-amounts.ts'

export type VisitPlace = { visitId: string; siteId: string; softenerId: string | null; bedId: string | null; day: string }

type TestValues = { hardnessGpg?: number; ironMgL?: number; freeChlorineMgL?: number; totalChlorineMgL?: number }
type Place = { point: MeasuringPoint; field: keyof TestValues; name: string }

/** Where each water value was measured, and what it is called among the values as typed. */
const WATER: Partial<Record<MeasurementKind, Place>> = {
  outletHardnessGpg: { point: 'softened', field: 'hardnessGpg', name: 'hardness' },
  rawHardnessGpg: { point: 'raw', field: 'hardnessGpg', name: 'hardness' },
  rawIronMgL: { point: 'raw', field: 'ironMgL', name: 'iron' },
  inletFreeChlorineMgL: { point: 'softener-inlet', field: 'freeChlorineMgL', name: 'freeChlorine' },
  inletTotalChlorineMgL: { point: 'softener-inlet', field: 'totalChlorineMgL', name: 'totalChlorine' },
}

async function recordTests(tx: Tx, command: Command, place: VisitPlace, measured: Measurement[]): Promise<void> {
  const tests = new Map<string, { values: TestValues; entered: ReturnType<typeof enteredOf> }>()
  for (const { kind, value, enteredValue, enteredUnit, why } of measured) {
    const where = WATER[kind]
    if (!where) continue
    const test = tests.get(where.point) ?? { values: {}, entered: {} }
    tests.set(where.point, test)
    test.values[where.field] = value
    const { name } = where
    Object.assign(test.entered, enteredOf({ [name]: { value: enteredValue, unit: enteredUnit } }, why ? { [name]: why } : undefined))
  }
  for (const [point, { values, entered }] of tests)
    await tx.waterTest.create({
      data: {
        companyId: command.companyId,
        id: newId(),
        siteId: place.siteId,
        softenerId: place.softenerId,
        visitId: place.visitId,
        day: dateOf(place.day),
        point,
        ...values,
        entered,
        source: sourceOn('visit', place.day),
      },
    })
}

const latest = (measured: Measurement[], kind: MeasurementKind) => measured.filter((one) => one.kind === kind).at(-1)?.value ?? null

/** Turns what a crew measured into dated water tests and, for the bed that was there, an inspection. */
export async function recordFindings(
  tx: Tx,
  command: Command,
  place: VisitPlace,
  measured: Measurement[],
  beadCondition: BeadCondition | null,
): Promise<void> {
  await recordTests(tx, command, place, measured)
  const capacityShare = latest(measured, 'capacityShare')
  const pressureDropPsi = latest(measured, 'serviceDropPsi')
  const moisturePercent = latest(measured, 'beadMoisturePercent')
  if (!place.bedId || [capacityShare, pressureDropPsi, moisturePercent, beadCondition].every((value) => value === null)) return
  await tx.inspection.create({
    data: {
      companyId: command.companyId,
      id: newId(),
      bedId: place.bedId,
      visitId: place.visitId,
      day: dateOf(place.day),
      capacityShare,
      pressureDropPsi,
      moistureShare: moisturePercent === null ? null : moisturePercent / 100,
      beadCondition,
      source: sourceOn('visit', place.day),
    },
  })
}
