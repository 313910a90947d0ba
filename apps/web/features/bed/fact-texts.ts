import type { BedFactChanges, BedPage } from '@almanac/contract/beds'
import { oneOf } from '@almanac/records/choices'
import { recordedResinKinds } from '@almanac/records/resin-kind'
import { judgeInTank, type TankRoom } from '@almanac/service-rules/amounts/judge-in-tank'
import { AMOUNT_KINDS } from '@almanac/units/amount-kinds'
import { numberText } from '@almanac/units/read-number'
import type { UnitSystem } from '@almanac/units/unit-system'
import { type Amount, type AmountText, enteredIn } from '@/client/amounts'

/** Amounts of a bed, by the fact they change, each of its kind. */
export const QUANTITIES = { volume: 'resin', gravel: 'gravel', tubeCut: 'tube', backwash: 'backwash' } as const
export type QuantityName = keyof typeof QUANTITIES

export type FactTexts = { tankSize: string; resinKind: string; began: string; lastSeenDay: string }

/** What stands in the form at first. */
export function factTexts(bed: BedPage): FactTexts {
  const { tank } = bed
  return {
    tankSize: tank.sizeAsWritten ?? (tank.diameterIn && tank.heightIn ? `${tank.diameterIn}x${tank.heightIn}` : ''),
    resinKind: bed.resinKind,
    // Read back as it stands here, whatever the company's language: so as days are kept, not as they are shown.
    began: bed.beganAsWritten ?? [...new Set([bed.beganEarliest, bed.beganLatest])].filter((day) => day !== null).join(' to '),
    lastSeenDay: bed.lastSeenDay ?? '',
  }
}

/** What was typed of an amount, where it still says what is kept: the valve of a backwash serves other beds too, and may have been changed there. */
export function enteredNow(bed: BedPage, name: QuantityName, kept: number) {
  const { dimension } = AMOUNT_KINDS[QUANTITIES[name]]
  const typed = bed.entered[name]
  return typed && Math.abs(dimension.convert(typed.value, typed.unit, dimension.units[0] ?? '') - kept) < 1e-6 ? typed : undefined
}

/** The amounts at first: as typed where that is kept and still holds, else in the company's units. */
export function quantityTexts(bed: BedPage, system: UnitSystem, locale: string): Partial<Record<QuantityName, AmountText>> {
  const recorded = { volume: bed.volumeFt3, gravel: bed.gravelLb, tubeCut: bed.tubeCutIn, backwash: bed.valve?.backwashGpm ?? null }
  const texts = Object.entries(recorded).flatMap(([key, kept]) => {
    if (kept === null) return []
    const { dimension } = AMOUNT_KINDS[QUANTITIES[key as QuantityName]]
    const base = dimension.units[0] ?? ''
    const typed = enteredNow(bed, key as QuantityName, kept)
    const unit = typed ? typed.unit : system === 'us' ? base : dimension.metric
    const value = typed ? typed.value : dimension.convert(kept, base, unit)
    return [[key, { text: numberText(value, locale, 3), unit, why: typed?.why ?? '' }] as const]
  })
  return Object.fromEntries(texts)
}

/** Judges of amounts that know the tank; none where its size is not known. */
export const judgesFor = (room: TankRoom | null) =>
  room
    ? {
        volume: (value: number, unit: string) => judgeInTank('resin', value, unit, room),
        gravel: (value: number, unit: string) => judgeInTank('gravel', value, unit, room),
        tubeCut: (value: number, unit: string) => judgeInTank('tube', value, unit, room),
      }
    : undefined

type Typed<T> = { before: T; now: T }
type Quantities = { texts: Typed<Record<QuantityName, AmountText>>; read: Record<QuantityName, Amount | null> }

/** The amounts that stand as they stood when the form opened. */
export const unchangedOf = ({ before, now }: Typed<Record<QuantityName, AmountText>>): QuantityName[] =>
  (Object.keys(QUANTITIES) as QuantityName[]).filter(
    (name) => now[name].text.trim() === before[name].text.trim() && now[name].unit === before[name].unit,
  )

/** The facts that differ from what stood there; an emptied one is sent as null: not known. */
export function changedFacts({ before, now }: Typed<FactTexts>, { texts, read }: Quantities): BedFactChanges {
  const facts: BedFactChanges = {}
  const unchanged = unchangedOf(texts)
  const changed = (name: QuantityName) => !unchanged.includes(name)
  if (now.tankSize.trim() !== before.tankSize.trim()) facts.tankSize = now.tankSize.trim()
  if (now.resinKind !== before.resinKind) facts.resinKind = oneOf(recordedResinKinds, now.resinKind) ?? 'unknown'
  if (now.began.trim() !== before.began.trim()) facts.began = now.began.trim()
  if (now.lastSeenDay !== before.lastSeenDay) facts.lastSeenDay = now.lastSeenDay || null
  if (changed('volume')) facts.volume = enteredIn(read.volume, ['ft3', 'L']) ?? null
  if (changed('gravel')) facts.gravel = enteredIn(read.gravel, ['lb', 'kg']) ?? null
  if (changed('tubeCut')) facts.tubeCut = enteredIn(read.tubeCut, ['in', 'cm', 'mm']) ?? null
  if (changed('backwash')) facts.backwash = enteredIn(read.backwash, ['gpm', 'L/min']) ?? null
  return facts
}
