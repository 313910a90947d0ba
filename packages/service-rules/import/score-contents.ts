import type { ImportField } from './fields.ts'
import { readConcentration } from './read-concentration.ts'
import { readConsent, readEmail, readPhones, readYesNo } from './read-contact.ts'
import { canBeDay } from './read-day.ts'
import { readDegrees } from './read-degrees.ts'
import { readDisinfectant } from './read-disinfectant.ts'
import { hardnessUnitIn, readHardness } from './read-hardness.ts'
import { readPlainNumber } from './read-number.ts'
import { readResinKind, readResinVolume } from './read-resin.ts'
import { readTank } from './read-tank.ts'

/** Whether a cell could stand in a column of the field at all; fields without an entry take any text. */
export function canBe(field: ImportField, cell: string, today: string): boolean {
  const test = possible[field]
  return test === undefined || test(cell, today)
}

/** The fields whose cells show by themselves what they are, the most telling first. */
export const tellingFields = [
  'email',
  'tank',
  'phone',
  'hardness',
  'resinVolume',
  'disinfectant',
  'street',
  'postcode',
  'notes',
  'customerName',
] as const
export type TellingField = (typeof tellingFields)[number]

/** Whether a cell shows by itself that it belongs to the field, with no header to help. */
export function tells(field: TellingField, cell: string): boolean {
  return telling[field](cell)
}

/** A date in either order, but not a bare number that might be anything. */
export function looksLikeDay(cell: string, today: string): boolean {
  return (['day-first', 'month-first'] as const).some((dayOrder) => canBeDay(cell, { today, dayOrder }))
}

const isDay = (cell: string, today: string) => looksLikeDay(cell, today)
const isYesNo = (cell: string) => readYesNo(cell).ok
const isWords = (cell: string) => /\p{L}{2}/u.test(cell) && !cell.includes('@')

const possible: Partial<Record<ImportField, (cell: string, today: string) => boolean>> = {
  customerName: isWords,
  contactName: isWords,
  phone: (cell) => readPhones(cell).ok,
  otherPhone: (cell) => readPhones(cell).ok,
  email: (cell) => readEmail(cell).ok,
  street: (cell) => /\p{L}{2}|^\d+[a-z]?$/iu.test(cell) && !cell.includes('@'),
  town: (cell) => isWords(cell) && !/\d{3}/.test(cell),
  postcode: (cell) => cell.length <= 10 && /\d/.test(cell) && !/[@.:]/.test(cell),
  region: (cell) => isWords(cell) && cell.length <= 40,
  latitude: (cell) => readDegrees(cell, 'latitude').ok,
  longitude: (cell) => readDegrees(cell, 'longitude').ok,
  tank: (cell) => readTank(cell, 'ft3').ok,
  tankCount: (cell) => /^(?:[1-8]|single|twin|duplex|triplex|simplex|dual)(?: tanks?)?$/i.test(cell),
  resinVolume: (cell) => readResinVolume(cell, 'ft3').ok,
  resinKind: (cell) => readResinKind(cell).ok,
  installed: isDay,
  bedBegan: isDay,
  lastSeen: isDay,
  supplyName: isWords,
  disinfectant: (cell) => readDisinfectant(cell).ok,
  hardness: (cell) => readHardness(cell, 'mg/L').ok,
  iron: (cell) => readConcentration(cell, 'iron', 'ug/L').ok,
  chlorine: (cell) => readConcentration(cell, 'chlorine', 'ug/L').ok,
  consent: (cell) => readConsent(cell).ok,
  mayEmail: isYesNo,
  mayPhone: isYesNo,
  mayWrite: isYesNo,
}

const streetWord =
  /\b(?:st|street|rd|road|ave?|avenue|ln|lane|dr|drive|blvd|ct|court|way|pl|place|terr?(?:ace)?|hwy|highway|pkwy|cir(?:cle)?|close|crescent|gardens|row|hill|trail|route|mews|green)\b\.?/i

const telling: Record<TellingField, (cell: string) => boolean> = {
  email: (cell) => readEmail(cell).ok,
  tank: (cell) => readPlainNumber(cell) === null && readTank(cell).ok && /\d\s*"?\s*x\s*\d|grain|\dk/i.test(cell),
  phone: (cell) => readPhones(cell).ok && /^\+|[\s().-]|^0\d{9,}|^\d{10,11}$/.test(cell) && !/^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}/.test(cell),
  hardness: (cell) => /[^\d.,\s]/.test(cell) && readHardness(cell, null).ok && hardnessUnitIn(cell.replace(/^[\d.,\s–-]+/, '')) !== 'mg/L',
  resinVolume: (cell) => readResinVolume(cell, null).ok,
  disinfectant: (cell) => /chlor/i.test(cell) && readDisinfectant(cell).ok && cell.length < 24,
  street: (cell) => /\d/.test(cell) && streetWord.test(cell) && cell.length < 60,
  postcode: (cell) => /^\d{5}-\d{4}$|^[A-Z]{1,2}\d[A-Z\d]? ?\d[A-Z]{2}$|^[A-Z]\d[A-Z] ?\d[A-Z]\d$/i.test(cell),
  notes: (cell) => cell.length > 25 && cell.split(/\s+/).length > 4,
  customerName: (cell) =>
    /^(?:(?:mrs?|ms|dr)\.? )?[\p{Lu}][\p{L}'’.-]+(?:,| (?:&|and) | )\s*[\p{Lu}][\p{L}'’.&\s-]*$/u.test(cell) &&
    !streetWord.test(cell) &&
    cell.length < 50,
}
