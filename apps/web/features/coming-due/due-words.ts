import type { DueBed } from '@almanac/contract/due'
import { drawBedThumb } from '@almanac/softener/drawing/bed-drawing'
import { formatVolumeFt3 } from '@almanac/units/format'
import type { UnitSystem } from '@almanac/units/unit-system'

const RESIN: Record<string, string> = { 'gel-8': '8 %', 'gel-10': '10 %', 'fine-mesh': 'fine mesh', unknown: 'resin unknown' }

/** "10×54, 1½ ft³, 8 %, 2012" */
export function bedWords(bed: DueBed, units: UnitSystem): string {
  const { tank } = bed
  const size = tank.diameterIn && tank.heightIn ? `${tank.diameterIn}×${tank.heightIn}` : (tank.sizeAsWritten ?? 'tank size unknown')
  const began = bed.beganAsWritten ?? bed.beganLatest?.slice(0, 4) ?? 'began unknown'
  const volume = bed.volumeFt3 ? formatVolumeFt3(bed.volumeFt3, units) : null
  return [
    tank.twin ? `twin ${size}` : size,
    volume,
    RESIN[bed.resinKind] ?? bed.resinKind,
    /^\d{4}-\d\d-\d\d$/.test(began) ? began.slice(0, 4) : began,
  ]
    .filter(Boolean)
    .join(', ')
}

/** The strongest reasons, at most two; "age" where the water takes nothing. */
export function driverWords(bed: DueBed): string {
  const strong = bed.drivers
    .filter((one) => Math.abs(one.yearsTaken) >= 0.3)
    .sort((a, b) => Math.abs(b.yearsTaken) - Math.abs(a.yearsTaken))
  return strong.length
    ? strong
        .slice(0, 2)
        .map((one) => one.words)
        .join('; ')
    : 'age'
}

/** The tank drawn small, where its size is known. */
export function thumbOf(bed: DueBed) {
  const { diameterIn, heightIn } = bed.tank
  if (!diameterIn || !heightIn) return null
  const drawn = drawBedThumb({ diameterIn, heightIn, resinVolumeFt3: bed.volumeFt3, gravelLb: bed.gravelLb, unitSystem: 'us' })
  return drawn.ok ? drawn.value : null
}

/** "58 %", and "under 1 %" rather than a nought that reads like never. */
export function chanceWords(chance: number): string {
  return chance > 0 && chance < 0.01 ? 'under 1 %' : `${Math.round(chance * 100)} %`
}
