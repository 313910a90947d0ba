import type { ResinKindId } from '@almanac/records/resin-kind'
import { RESIN_KINDS, resinKindOr8 } from '@almanac/softener/resin/resin-kinds'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

type Row = [
  id: ResinKindId,
  capacityEqL: number,
  weightLbFt3: number,
  densityKgM3: number,
  meanMm: number,
  smallestMm: number,
  maxF: number,
]

/**
 * Typical data sheets: capacity (least), shipping weight, particle density of 8%, beads of 0.3 to 1.2 mm. From memory, unverified: the
 * density of 10%, the sizes of fine mesh, and the 110 °F of a domestic unit. Mean bead 0.65 mm and voids 0.38: the derived resin case.
 */
const ROWS: readonly Row[] = [
  ['gel-8', 2.0, 51, 1280, 0.65, 0.3, 110],
  ['gel-10', 2.1, 53, 1300, 0.65, 0.3, 110],
  ['fine-mesh', 2.0, 51, 1280, 0.45, 0.25, 110],
]

describe('resin kinds', () => {
  it.each(ROWS)('%s', (id, capacity, weight, density, mean, smallest, maxF) => {
    const kind = RESIN_KINDS[id]
    const values = [
      kind.totalCapacityEqL,
      kind.wetWeightLbFt3,
      kind.particleDensityKgM3,
      kind.meanDiameterMm,
      kind.smallestBeadMm,
      kind.maxTemperatureF,
    ]
    expect(values.map((one) => one.value)).toEqual([capacity, weight, density, mean, smallest, maxF])
    expect(kind.packedVoidage.value).toBe(0.38)
    for (const one of [...values, kind.packedVoidage]) expect(one.source).not.toBe('')
  })
  it('an unrecorded kind is taken as 8%, and that is said', () => {
    expect(resinKindOr8(null)).toMatchObject({ kind: { id: 'gel-8' }, assumed: true })
    expect(SPEAKING.words('resinAssumed')).toContain('not recorded')
    expect(resinKindOr8('gel-10').assumed).toBe(false)
  })
})
