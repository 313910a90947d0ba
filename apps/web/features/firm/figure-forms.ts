import type { FigureValue } from '@almanac/contract/firm'
import { minorPer } from '@almanac/units/money'
import { firstUnit, readTyped } from '@/client/typed-quantity'
import { G_L_PER_KGR_FT3, G_L_PER_LB_FT3, M_H_PER_GPM_FT2, number, type Reader, type Valve } from './figure-words.ts'
import { saltPack, waterPack } from './price-packs.ts'

/** One thing to type or choose. `unit` stands beside it; `stored` is the unit kept, converted from the one typed in. */
export type FormField = {
  name: string
  label: string
  hint?: string
  unit?: string
  stored?: string
  choices?: { value: string; label: string }[]
  lines?: number
  required?: boolean
}
export type Texts = Record<string, string>
type Read = (texts: Texts) => FigureValue

/** How a figure is typed: its fields, its texts as they stand, and the value they make. Reading throws a sentence for what is no number. */
export type FigureForm = { fields: FormField[]; texts: Texts; read: Read }

/** What a form throws where a text cannot be read; `field` names it. */
export class Unreadable extends Error {
  readonly field: string
  constructor(field: string, sentence: string) {
    super(sentence)
    this.field = field
  }
}

/** How many of the typed unit one stored unit is. */
const perStored = (stored: string, unit: string) => 1 / (readTyped('1', unit, stored).value ?? 1)
export const shownIn = (value: number | null, stored: string, unit: string) =>
  value === null ? '' : number(value * perStored(stored, unit), 4)

function readOne(texts: Texts, name: string, stored: string, unit: string): number | null {
  const { value, error } = readTyped(texts[name] ?? '', unit, stored)
  if (error) throw new Unreadable(name, error)
  return value
}

function needed(texts: Texts, name: string, stored: string, unit: string): number {
  const value = readOne(texts, name, stored, unit)
  if (value === null) throw new Unreadable(name, 'Type a number here.')
  return value
}

const list = (text: string) =>
  text
    .split(/[;\n]|,\s+/)
    .map((part) => part.trim())
    .filter(Boolean)

function readList(texts: Texts, name: string, stored: string, unit: string): number[] {
  return list(texts[name] ?? '').map((part) => needed({ [name]: part }, name, stored, unit))
}

/** One number in one unit. `scale` is what is stored for one of what is typed. */
export function numberForm(label: string, unit: string, value: number | null, scale: number, hint?: string): FigureForm {
  return {
    fields: [{ name: 'value', label, unit, hint, required: true }],
    texts: { value: value === null ? '' : number(value / scale, 6) },
    read: (texts) => needed(texts, 'value', '', '') * scale,
  }
}

export function tankForm(value: unknown, { system }: Reader): FigureForm {
  const [inch, ft3, lb] = ['in', firstUnit('ft3', system), firstUnit('lb', system)]
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
      diameter: tank ? String(tank.diameterIn) : '',
      height: tank ? String(tank.heightIn) : '',
      resin: tank ? shownIn(tank.resinFt3.usual, 'ft3', ft3) : '',
      gravel: tank ? shownIn(tank.gravelLb.usual, 'lb', lb) : '',
      openings: tank ? tank.openingsIn.join(', ') : '2.5',
    },
    read: (texts) => ({
      diameterIn: needed(texts, 'diameter', 'in', inch),
      heightIn: needed(texts, 'height', 'in', inch),
      resinFt3: { usual: needed(texts, 'resin', 'ft3', ft3) },
      gravelLb: { usual: needed(texts, 'gravel', 'lb', lb) },
      openingsIn: readList(texts, 'openings', 'in', inch),
    }),
  }
}

export function valveForm(value: unknown, { system }: Reader): FigureForm {
  const [inch, gpm] = [system === 'us' ? 'in' : 'mm', firstUnit('gpm', system)]
  const valve = value as Valve | null
  return {
    fields: [
      { name: 'label', label: 'What you call it', required: true },
      { name: 'words', label: 'Words on its label', hint: 'By which a caller would know it: meter, dial, cabinet' },
      {
        name: 'control',
        label: 'It regenerates by',
        choices: [
          { value: 'meter', label: 'meter' },
          { value: 'timer', label: 'timer' },
        ],
      },
      { name: 'tube', label: 'Distributor tube, outside diameter', unit: inch, hint: 'Empty where it differs' },
      { name: 'backwash', label: 'Backwash flows it comes with', unit: gpm, hint: 'Several: 1.5, 2, 2.4' },
      { name: 'refill', label: 'Refill flow', unit: gpm },
      { name: 'tubeRule', label: 'How high the tube stands', lines: 2 },
      { name: 'seals', label: 'O-rings and seals', lines: 2 },
    ],
    texts: {
      label: valve?.label ?? '',
      words: valve?.labelWords.join(', ') ?? '',
      control: valve?.control ?? 'meter',
      tube: shownIn(valve?.tubeOdIn ?? null, 'in', inch),
      backwash: valve?.backwashGpm.map((flow) => shownIn(flow, 'gpm', gpm)).join(', ') ?? '',
      refill: shownIn(valve?.refillGpm ?? null, 'gpm', gpm),
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
      tubeOdIn: readOne(texts, 'tube', 'in', inch),
      backwashGpm: readList(texts, 'backwash', 'gpm', gpm),
      refillGpm: readOne(texts, 'refill', 'gpm', gpm),
      tubeRule: texts.tubeRule ?? '',
      seals: texts.seals ?? '',
    }),
  }
}

export function bagsForm(value: unknown, { system }: Reader): FigureForm {
  const unit = firstUnit('ft3', system)
  const bags = value as number[]
  return {
    fields: [{ name: 'bags', label: 'Bag sizes', unit, hint: 'Largest first: 1, 0.5, 0.25', required: true }],
    texts: { bags: bags.map((size) => shownIn(size, 'ft3', unit)).join(', ') },
    read: (texts) => readList(texts, 'bags', 'ft3', unit),
  }
}

export function curveForm(value: unknown, { system }: Reader): FigureForm {
  const us = system === 'us'
  const [salt, capacity] = us ? [1, 1] : [G_L_PER_LB_FT3, G_L_PER_KGR_FT3]
  const points = value as [number, number][]
  const hint = us
    ? 'One point a line: salt in lb/ft³, then capacity in kgr/ft³'
    : 'One point a line: salt in g/L, then capacity in g/L as CaCO₃'
  return {
    fields: [{ name: 'points', label: 'Points of the curve', hint, lines: Math.max(5, points.length + 1), required: true }],
    texts: { points: points.map(([x, y]) => `${number(x * salt, 2)}  ${number(y * capacity, 2)}`).join('\n') },
    read: (texts) =>
      (texts.points ?? '')
        .split('\n')
        .filter((row) => row.trim() !== '')
        .map((row): [number, number] => {
          const parts = row
            .trim()
            .split(/[\s→]+/)
            .map((part) => Number(part.replace(',', '.')))
          const [x, y] = parts
          if (parts.length !== 2 || x === undefined || y === undefined || !Number.isFinite(x) || !Number.isFinite(y))
            throw new Unreadable('points', `“${row.trim()}” is not two numbers. Write one point a line, such as 10 29.`)
          return [x / salt, y / capacity]
        }),
  }
}

export function backwashForm(value: unknown, system: Reader['system']): FigureForm {
  const stored = value as { min: number; usual: number; max: number }
  const [unit, scale] = system === 'us' ? ['gpm/ft²', 1] : ['m/h', M_H_PER_GPM_FT2]
  const typed = (gpmFt2: number) => (system === 'us' ? String(gpmFt2) : number(gpmFt2 * scale, 2))
  const read = (texts: Texts, name: string) => needed(texts, name, '', '') / scale
  return {
    fields: [
      { name: 'min', label: 'Least', unit, required: true },
      { name: 'usual', label: 'Usual', unit, required: true },
      { name: 'max', label: 'Most', unit, required: true },
    ],
    texts: { min: typed(stored.min), usual: typed(stored.usual), max: typed(stored.max) },
    read: (texts) => ({ min: read(texts, 'min'), usual: read(texts, 'usual'), max: read(texts, 'max') }),
  }
}

export function reserveForm(value: unknown): FigureForm {
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
      { name: 'amount', label: 'How much', hint: 'Days, or per cent', required: true },
    ],
    texts: { kind: reserve.kind, amount: reserve.kind === 'days' ? String(reserve.days) : number(reserve.share * 100, 1) },
    read: (texts) => {
      const amount = needed(texts, 'amount', '', '')
      return texts.kind === 'share' ? { kind: 'share', share: amount / 100 } : { kind: 'days', days: amount }
    },
  }
}

/** The form of a figure by its key; `value` is what stands now, null for a new tank or valve. */
export function formOf(key: string, value: unknown, reader: Reader): FigureForm {
  const { system, currency } = reader
  const plain = value as number | null
  if (key.startsWith('tank:')) return tankForm(value, reader)
  if (key.startsWith('valve:')) return valveForm(value, reader)
  if (key.startsWith('curve:')) return curveForm(value, reader)
  if (key === 'bags') return bagsForm(value, reader)
  if (key === 'reserve') return reserveForm(value)
  if (key === 'backwash:gpm-ft2') return backwashForm(value, system)
  if (key === 'backwash:expansion') return numberForm('Expansion wanted', '%', plain, 0.01)
  if (key.startsWith('allowance:')) return numberForm('Added for each mg/L', 'gpg', plain, 1)
  const pack = key === 'price:salt-per-lb' ? saltPack(system) : key === 'price:water-per-gal' ? waterPack(system) : null
  if (pack) return numberForm(`Price for ${pack.label}`, currency, plain, minorPer(currency) / pack.size)
  const unit = firstUnit('ft3', system)
  return numberForm('From this much resin up', unit, plain, 1 / perStored('ft3', unit), 'The record of a unit outranks the rule.')
}
