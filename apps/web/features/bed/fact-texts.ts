import type { BedFacts, BedPage } from '@almanac/contract/beds'
import { oneOf } from '@almanac/records/choices'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { convertFlow } from '@almanac/units/flow'
import { showNumber } from '@almanac/units/format-number'
import { convertLength } from '@almanac/units/length'
import { convertMass } from '@almanac/units/mass'
import { parseQuantity } from '@almanac/units/parse-quantity'
import type { UnitSystem } from '@almanac/units/unit-system'
import { convertVolume } from '@almanac/units/volume'

/** The units each quantity may be typed in; US customary first. */
export const UNITS = {
  volume: ['ft3', 'L'],
  gravel: ['lb', 'kg'],
  tubeCut: ['in', 'cm', 'mm'],
  backwash: ['gpm', 'L/min'],
} as const
export type QuantityName = keyof typeof UNITS

export type FactTexts = {
  tankSize: string
  resinKind: string
  began: string
  lastSeenDay: string
} & Record<QuantityName | `${QuantityName}Unit`, string>

/** What stands in the form at first: as typed where that was kept, else in the company's units. */
export function factTexts(bed: BedPage, system: UnitSystem): FactTexts {
  const metric = system === 'metric'
  const start = (name: QuantityName, canonical: number | null | undefined, convert: (value: number) => number) => {
    const typed = bed.entered[name]
    const unit = typed?.unit ?? UNITS[name][metric ? 1 : 0]
    const value = typed?.value ?? (canonical === null || canonical === undefined ? null : metric ? convert(canonical) : canonical)
    return { [name]: showNumber(value, 3)?.replaceAll(',', '') ?? '', [`${name}Unit`]: unit }
  }
  const { tank } = bed
  return {
    tankSize: tank.sizeAsWritten ?? (tank.diameterIn && tank.heightIn ? `${tank.diameterIn}x${tank.heightIn}` : ''),
    resinKind: bed.resinKind,
    began:
      bed.beganAsWritten ??
      (bed.beganEarliest === bed.beganLatest ? (bed.beganEarliest ?? '') : `${bed.beganEarliest} to ${bed.beganLatest}`),
    lastSeenDay: bed.lastSeenDay ?? '',
    ...start('volume', bed.volumeFt3, (value) => convertVolume(value, 'ft3', 'L')),
    ...start('gravel', bed.gravelLb, (value) => convertMass(value, 'lb', 'kg')),
    ...start('tubeCut', bed.tubeCutIn, (value) => convertLength(value, 'in', 'cm')),
    ...start('backwash', bed.valve?.backwashGpm, (value) => convertFlow(value, 'gpm', 'L/min')),
  } as FactTexts
}

type Changed = { facts: BedFacts; errors: Partial<Record<QuantityName, string>> }

/** The facts that differ from what stood there; unreadable quantities come back with their sentence. */
export function changedFacts(before: FactTexts, now: FactTexts): Changed {
  const facts: BedFacts = {}
  const errors: Changed['errors'] = {}
  const quantity = <N extends QuantityName>(name: N): { value: number; unit: (typeof UNITS)[N][number] } | null | undefined => {
    const text = now[name].trim()
    if (text === before[name].trim() && now[`${name}Unit`] === before[`${name}Unit`]) return undefined
    if (text === '') return before[name].trim() === '' ? undefined : null
    const unit = UNITS[name].find((one) => one === now[`${name}Unit`]) ?? UNITS[name][0]
    const parsed = parseQuantity(`${text} ${unit}`)
    if (parsed.ok) return { value: parsed.value, unit }
    errors[name] = parsed.reason
    return undefined
  }
  if (now.tankSize.trim() !== before.tankSize.trim()) facts.tankSize = now.tankSize.trim()
  if (now.resinKind !== before.resinKind) facts.resinKind = oneOf(recordedResinKinds, now.resinKind) ?? 'unknown'
  if (now.began.trim() !== before.began.trim()) facts.began = now.began.trim()
  if (now.lastSeenDay !== before.lastSeenDay) facts.lastSeenDay = now.lastSeenDay || null
  const [volume, gravel, tubeCut, backwash] = [quantity('volume'), quantity('gravel'), quantity('tubeCut'), quantity('backwash')]
  if (volume !== undefined) facts.volume = volume
  if (gravel !== undefined) facts.gravel = gravel
  if (tubeCut !== undefined) facts.tubeCut = tubeCut
  if (backwash !== undefined) facts.backwash = backwash
  return { facts, errors }
}
