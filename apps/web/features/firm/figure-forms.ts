import type { FigureValue } from '@almanac/contract/firm'
import type { AmountRule } from '@almanac/units/amount-kinds'
import { packOf } from '@almanac/units/price-packs'
import { readAmount } from '@almanac/units/read-amount'
import { numberText, readNumber } from '@almanac/units/read-number'
import type { UnitSystem } from '@almanac/units/unit-system'
import { isReason } from '@/client/amounts'
import { G_L_PER_KGR_FT3, G_L_PER_LB_FT3, M_H_PER_GPM_FT2, type Valve } from '@/client/figure-words'
import { figureUnit, needed, neededList, perStored, readOne, shownIn, type Texts, Unreadable } from './figure-amounts.ts'

/** One thing to type or choose. `unit` stands beside it. */
export type FormField = {
  name: string
  label: string
  hint?: string
  unit?: string
  /** What it may be, where it is one amount. */
  rule?: AmountRule
  choices?: { value: string; label: string }[]
  lines?: number
  required?: boolean
}
/** How a company reads and types its figures. */
export type DisplayUnits = { system: UnitSystem; currency: string; locale: string }
type Read = (texts: Texts, why: string) => FigureValue

/** How a figure is typed: its fields, its texts as they stand, and the value they make. Reading throws a sentence for what is no number, and asks back what is unusual and has no reason. */
export type FigureForm = { fields: FormField[]; texts: Texts; read: Read }

/** One number in one unit. `scale` is what is stored for one of what is typed. */
function numberForm(
  label: string,
  unit: string,
  value: number | null,
  scale: number,
  { locale, hint }: { locale: string; hint?: string },
): FigureForm {
  return {
    fields: [{ name: 'value', label, unit, hint, required: true }],
    texts: { value: value === null ? '' : numberText(value / scale, locale) },
    read: (texts) => needed(texts, 'value', { stored: '', unit: '', locale }) * scale,
  }
}

function priceForm(pack: NonNullable<ReturnType<typeof packOf>>, value: number | null, { currency, locale }: DisplayUnits): FigureForm {
  const kept = pack.keptPer(currency)
  return {
    fields: [{ name: 'value', label: `Price for ${pack.label}`, unit: currency, required: true }],
    texts: { value: value === null ? '' : numberText(value / kept, locale) },
    read: (texts, why) => {
      const reading = readAmount(pack.rule(currency), texts.value ?? '', { locale })
      if (reading.state === 'empty') throw new Unreadable('value', 'Type a number here.')
      if (reading.state === 'refused') throw new Unreadable('value', reading.said)
      if (reading.odd !== null && !isReason(why)) throw new Unreadable('value', reading.odd)
      return reading.value * kept
    },
  }
}

function tankForm(value: unknown, { system, locale }: DisplayUnits): FigureForm {
  const [inch, ft3, lb] = ['in', figureUnit('ft3', system), figureUnit('lb', system)]
  const tank = value as {
    diameterIn: number
    heightIn: number
    resinFt3: { usual: number }
    gravelLb: { usual: number }
    openingsIn: number[]
  } | null
  return {
    fields: [
      ...(tank
        ? []
        : [
            { name: 'diameter', label: 'Diameter', unit: inch, required: true },
            { name: 'height', label: 'Height without the valve', unit: inch, required: true },
          ]),
      { name: 'resin', label: 'Usual resin', unit: ft3, required: true },
      { name: 'gravel', label: 'Usual gravel', unit: lb, hint: 'None? Type 0.', required: true },
      { name: 'openings', label: 'Openings', unit: inch, hint: 'Several: 2.5, 4', required: true },
    ],
    texts: {
      diameter: tank ? numberText(tank.diameterIn, locale) : '',
      height: tank ? numberText(tank.heightIn, locale) : '',
      resin: tank ? shownIn(tank.resinFt3.usual, 'ft3', ft3, locale) : '',
      gravel: tank ? shownIn(tank.gravelLb.usual, 'lb', lb, locale) : '',
      openings: (tank?.openingsIn ?? [2.5]).map((opening) => numberText(opening, locale)).join(', '),
    },
    read: (texts) => ({
      diameterIn: needed(texts, 'diameter', { stored: 'in', unit: inch, locale }),
      heightIn: needed(texts, 'height', { stored: 'in', unit: inch, locale }),
      resinFt3: { usual: needed(texts, 'resin', { stored: 'ft3', unit: ft3, locale }) },
      gravelLb: { usual: needed(texts, 'gravel', { stored: 'lb', unit: lb, locale }) },
      openingsIn: neededList(texts, 'openings', { stored: 'in', unit: inch, locale }),
    }),
  }
}

function valveForm(value: unknown, { system, locale }: DisplayUnits): FigureForm {
  const [inch, gpm] = [system === 'us' ? 'in' : 'mm', figureUnit('gpm', system)]
  const valve = value as Valve | null
  return {
    fields: [
      { name: 'label', label: 'What you call it', required: true },
      { name: 'words', label: 'Words on its label', hint: 'How a caller would describe it: meter, dial, cabinet' },
      {
        name: 'control',
        label: 'It regenerates by',
        choices: [
          { value: 'meter', label: 'meter' },
          { value: 'timer', label: 'timer' },
        ],
      },
      { name: 'tube', label: 'Distributor tube, outside diameter', unit: inch, hint: 'Leave blank where it varies' },
      { name: 'backwash', label: 'Backwash flows it comes with', unit: gpm, hint: 'Several: 1.5, 2, 2.4' },
      { name: 'refill', label: 'Refill flow', unit: gpm },
      { name: 'tubeRule', label: 'Tube height at the opening', lines: 2 },
      { name: 'seals', label: 'O-rings and seals', lines: 2 },
    ],
    texts: {
      label: valve?.label ?? '',
      words: valve?.labelWords.join(', ') ?? '',
      control: valve?.control ?? 'meter',
      tube: shownIn(valve?.tubeOdIn ?? null, 'in', inch, locale),
      backwash: valve?.backwashGpm.map((flow) => shownIn(flow, 'gpm', gpm, locale)).join(', ') ?? '',
      refill: shownIn(valve?.refillGpm ?? null, 'gpm', gpm, locale),
      tubeRule: valve?.tubeRule ?? '',
      seals: valve?.seals ?? '',
    },
    read: (texts) => ({
      label: (texts.label ?? '').trim(),
      labelWords: (texts.words ?? '')
        .split(',')
        .map((word) => word.trim())
        .filter(Boolean),
      control: texts.control === 'timer' ? 'timer' : 'meter',
      tubeOdIn: readOne(texts, 'tube', { stored: 'in', unit: inch, locale }),
      backwashGpm: neededList(texts, 'backwash', { stored: 'gpm', unit: gpm, locale }),
      refillGpm: readOne(texts, 'refill', { stored: 'gpm', unit: gpm, locale }),
      tubeRule: texts.tubeRule ?? '',
      seals: texts.seals ?? '',
    }),
  }
}

function bagsForm(value: unknown, { system, locale }: DisplayUnits): FigureForm {
  const unit = figureUnit('ft3', system)
  const bags = value as number[]
  return {
    fields: [{ name: 'bags', label: 'Bag sizes', unit, hint: 'Largest first: 1, 0.5, 0.25', required: true }],
    texts: { bags: bags.map((size) => shownIn(size, 'ft3', unit, locale)).join(', ') },
    read: (texts) => neededList(texts, 'bags', { stored: 'ft3', unit: unit, locale }),
  }
}

function curveForm(value: unknown, { system, locale }: DisplayUnits): FigureForm {
  const us = system === 'us'
  const [salt, capacity] = us ? [1, 1] : [G_L_PER_LB_FT3, G_L_PER_KGR_FT3]
  const points = value as [number, number][]
  const hint = us
    ? 'One point a line: salt in lb/ft³, then capacity in kgr/ft³'
    : 'One point a line: salt in g/L, then capacity in g/L as CaCO₃'
  return {
    fields: [{ name: 'points', label: 'Points of the curve', hint, lines: Math.max(5, points.length + 1), required: true }],
    texts: { points: points.map(([x, y]) => `${numberText(x * salt, locale, 2)}  ${numberText(y * capacity, locale, 2)}`).join('\n') },
    read: (texts) =>
      (texts.points ?? '')
        .split('\n')
        .filter((row) => row.trim() !== '')
        .map((row): [number, number] => {
          const parts = row
            .trim()
            .split(/[\s→]+/)
            .map((part) => readNumber(part, locale))
          const [x, y] = parts
          if (parts.length !== 2 || x === undefined || y === undefined || x === null || y === null)
            throw new Unreadable('points', `“${row.trim()}” is not two numbers. Write one point a line, such as 10 29.`)
          return [x / salt, y / capacity]
        }),
  }
}

function backwashForm(value: unknown, { system, locale }: DisplayUnits): FigureForm {
  const stored = value as { min: number; usual: number; max: number }
  const [unit, scale] = system === 'us' ? ['gpm/ft²', 1] : ['m/h', M_H_PER_GPM_FT2]
  const typed = (gpmFt2: number) => numberText(gpmFt2 * scale, locale, system === 'us' ? 6 : 2)
  const read = (texts: Texts, name: string) => needed(texts, name, { stored: '', unit: '', locale }) / scale
  return {
    fields: [
      { name: 'min', label: 'Lowest', unit, required: true },
      { name: 'usual', label: 'Usual', unit, required: true },
      { name: 'max', label: 'Highest', unit, required: true },
    ],
    texts: { min: typed(stored.min), usual: typed(stored.usual), max: typed(stored.max) },
    read: (texts) => ({ min: read(texts, 'min'), usual: read(texts, 'usual'), max: read(texts, 'max') }),
  }
}

function reserveForm(value: unknown, { locale }: DisplayUnits): FigureForm {
  const reserve = value as { kind: 'days'; days: number } | { kind: 'share'; share: number }
  return {
    fields: [
      {
        name: 'kind',
        label: 'Counted as',
        choices: [
          { value: 'days', label: 'days of use' },
          { value: 'share', label: '% of the capacity' },
        ],
      },
      { name: 'amount', label: 'How much', hint: 'Days, or percent', required: true },
    ],
    texts: {
      kind: reserve.kind,
      amount: numberText(reserve.kind === 'days' ? reserve.days : reserve.share * 100, locale, reserve.kind === 'days' ? 6 : 1),
    },
    read: (texts) => {
      const amount = needed(texts, 'amount', { stored: '', unit: '', locale })
      return texts.kind === 'share' ? { kind: 'share', share: amount / 100 } : { kind: 'days', days: amount }
    },
  }
}

/** The form of a figure by its key; `value` is what stands now, null for a new tank or valve. */
export function formOf(key: string, value: unknown, reader: DisplayUnits): FigureForm {
  const { system, locale } = reader
  const plain = value as number | null
  if (key.startsWith('tank:')) return tankForm(value, reader)
  if (key.startsWith('valve:')) return valveForm(value, reader)
  if (key.startsWith('curve:')) return curveForm(value, reader)
  if (key === 'bags') return bagsForm(value, reader)
  if (key === 'reserve') return reserveForm(value, reader)
  if (key === 'backwash:gpm-ft2') return backwashForm(value, reader)
  if (key === 'backwash:expansion') return numberForm('Expansion wanted', '%', plain, 0.01, { locale })
  if (key.startsWith('allowance:')) return numberForm('Added for each mg/L', 'gpg', plain, 1, { locale })
  if (key === 'outlet-limit-gpg') {
    const hardness = figureUnit('gpg', system)
    return numberForm('Must stay below', hardness, plain, 1 / perStored('gpg', hardness), {
      locale,
      hint: 'At or above it a close-out asks for the reason.',
    })
  }
  const pack = packOf(key, system)
  if (pack) return priceForm(pack, plain, reader)
  const unit = figureUnit('ft3', system)
  return numberForm('From this resin volume', unit, plain, 1 / perStored('ft3', unit), {
    locale,
    hint: 'A unit’s own record comes before this rule.',
  })
}
