import { AMOUNT_KINDS, type AmountKind, type AmountRule } from '@almanac/units/amount-kinds'
import type { AmountSaid } from '@almanac/units/amount-said'
import { oneUnit, firstUnit as unitOf } from '@almanac/units/dimensions'
import { readAmount } from '@almanac/units/read-amount'
import { numberText } from '@almanac/units/read-number'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import type { UnitSystem } from '@almanac/units/unit-system'

/** What is typed, by field. */
export type Texts = Record<string, string>

/** What a form throws where a text cannot be read; `field` names it. */
export class Unreadable extends Error {
  readonly field: string
  /** What is wrong, where it is an amount. */
  readonly said: AmountSaid | null
  constructor(field: string, wrong: string | AmountSaid) {
    super(typeof wrong === 'string' ? wrong : wrong.key)
    this.field = field
    this.said = typeof wrong === 'string' ? null : wrong
  }
}

/** The kind of a figure by the unit it is kept in. What a figure may be is decided where it is put among the figures. */
const KINDS: Record<string, AmountKind> = { in: 'figureLength', ft3: 'figureVolume', lb: 'figureMass', gpm: 'figureFlow', gpg: 'hardness' }

const plainRule = (unit: string): AmountRule => ({
  ...{ name: 'figure', dimension: oneUnit(unit), least: 0, most: 1e9 },
  ...{ example: '2.5', source: COMMON_PRACTICE },
})

function figureRule(stored: string): AmountRule {
  const kind = KINDS[stored]
  return kind ? AMOUNT_KINDS[kind] : plainRule(stored)
}

/** The unit that people of a system type a figure in which is kept in `stored`. */
export const figureUnit = (stored: string, system: UnitSystem): string => unitOf(figureRule(stored).dimension, system)

/** How many of the typed unit one stored unit is. */
export const perStored = (stored: string, unit: string): number => figureRule(stored).dimension.convert(1, stored, unit)

/** A figure as text to type over, in `unit`. */
export const shownIn = (value: number | null, stored: string, unit: string, locale: string): string =>
  value === null ? '' : numberText(value * perStored(stored, unit), locale, 4)

/** One amount of a form, null where it is empty. Throws `Unreadable`. */
export function readOne(
  texts: Texts,
  name: string,
  { stored, unit, locale }: { stored: string; unit: string; locale: string },
): number | null {
  const reading = readAmount(figureRule(stored), texts[name] ?? '', { unit, locale })
  if (reading.state === 'refused') throw new Unreadable(name, reading.said)
  return reading.state === 'read' ? reading.value : null
}

/** As `readOne`, of one that is needed. */
export function needed(texts: Texts, name: string, unit: { stored: string; unit: string; locale: string }): number {
  const value = readOne(texts, name, unit)
  if (value === null) throw new Unreadable(name, 'Type a number here.')
  return value
}

/** Several amounts in one text, parted by semicolons, lines, or commas with a space behind. */
export function neededList(texts: Texts, name: string, unit: { stored: string; unit: string; locale: string }): number[] {
  const parts = (texts[name] ?? '').split(/[;\n]|,\s+/).map((part) => part.trim())
  return parts.filter(Boolean).map((part) => needed({ [name]: part }, name, unit))
}
