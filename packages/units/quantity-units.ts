/** What a quantity measures, and the units it is read in; each unit name is the one the conversion functions take. */
export type QuantityKind = 'hardness' | 'volume' | 'capacity' | 'length' | 'mass' | 'temperature' | 'flow' | 'pressure' | 'concentration'

export type QuantityUnit =
  | 'gpg'
  | 'mg/L'
  | 'dH'
  | 'fH'
  | 'mmol/L'
  | 'ug/L'
  | 'ft3'
  | 'L'
  | 'gal'
  | 'm3'
  | 'floz'
  | 'grain'
  | 'in'
  | 'ft'
  | 'mm'
  | 'cm'
  | 'm'
  | 'lb'
  | 'kg'
  | 'g'
  | 'oz'
  | 'F'
  | 'C'
  | 'gpm'
  | 'L/min'
  | 'm3/h'
  | 'psi'
  | 'kPa'
  | 'bar'

type UnitWords = { unit: QuantityUnit; kind: QuantityKind; words: readonly string[] }

/** How people write units. A word stands once: "m" is metres, never minutes. mg/L serves hardness and other substances alike. */
const UNIT_WORDS: readonly UnitWords[] = [
  {
    unit: 'gpg',
    kind: 'hardness',
    words: ['gpg', 'gr/gal', 'grain/gal', 'grains/gal', 'grains per gallon', 'grain per gallon', 'gr per gal'],
  },
  { unit: 'mg/L', kind: 'hardness', words: ['mg/l', 'mgl', 'ppm', 'mg/l caco3', 'mg/l as caco3', 'ppm caco3', 'ppm as caco3'] },
  { unit: 'dH', kind: 'hardness', words: ['dh', '°dh', 'deg dh', '° dh', 'odh'] },
  { unit: 'fH', kind: 'hardness', words: ['fh', '°fh', 'deg fh', '° fh', '°f h', 'tfh'] },
  { unit: 'mmol/L', kind: 'hardness', words: ['mmol/l', 'mmol'] },
  { unit: 'ug/L', kind: 'concentration', words: ['ug/l', 'µg/l', 'μg/l', 'ppb'] },
  {
    unit: 'ft3',
    kind: 'volume',
    words: [
      'ft3',
      'ft³',
      'ft^3',
      'cu ft',
      'cu.ft',
      'cu. ft',
      'cu.ft.',
      'cu. ft.',
      'cuft',
      'cf',
      'cubic foot',
      'cubic feet',
      'cube',
      'cubes',
    ],
  },
  { unit: 'L', kind: 'volume', words: ['l', 'lt', 'ltr', 'ltrs', 'liter', 'liters', 'litre', 'litres'] },
  { unit: 'gal', kind: 'volume', words: ['gal', 'gals', 'gallon', 'gallons'] },
  { unit: 'm3', kind: 'volume', words: ['m3', 'm³'] },
  { unit: 'floz', kind: 'volume', words: ['fl oz', 'floz', 'fl. oz', 'fl. oz.', 'fluid ounce', 'fluid ounces'] },
  { unit: 'grain', kind: 'capacity', words: ['grain', 'grains', 'gr', 'grn'] },
  { unit: 'in', kind: 'length', words: ['in', 'in.', 'inch', 'inches', '"', '”', '″', "''"] },
  { unit: 'ft', kind: 'length', words: ['ft', 'ft.', 'foot', 'feet', "'", '′', '’'] },
  { unit: 'mm', kind: 'length', words: ['mm', 'millimeter', 'millimeters', 'millimetre', 'millimetres'] },
  { unit: 'cm', kind: 'length', words: ['cm', 'centimeter', 'centimeters', 'centimetre', 'centimetres'] },
  { unit: 'm', kind: 'length', words: ['m', 'meter', 'meters', 'metre', 'metres'] },
  { unit: 'lb', kind: 'mass', words: ['lb', 'lbs', 'lb.', 'lbs.', 'pound', 'pounds', '#'] },
  { unit: 'kg', kind: 'mass', words: ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'] },
  { unit: 'g', kind: 'mass', words: ['g', 'gram', 'grams'] },
  { unit: 'oz', kind: 'mass', words: ['oz', 'oz.', 'ounce', 'ounces'] },
  { unit: 'F', kind: 'temperature', words: ['f', '°f', 'deg f', '° f', 'degf', 'fahrenheit'] },
  { unit: 'C', kind: 'temperature', words: ['c', '°c', 'deg c', '° c', 'degc', 'celsius'] },
  { unit: 'gpm', kind: 'flow', words: ['gpm', 'gal/min', 'gallons per minute'] },
  { unit: 'L/min', kind: 'flow', words: ['l/min', 'lpm', 'l/m', 'liters per minute', 'liters per minute'] },
  { unit: 'm3/h', kind: 'flow', words: ['m3/h', 'm³/h', 'm3/hr', 'm³/hr'] },
  { unit: 'psi', kind: 'pressure', words: ['psi', 'psig', 'lb/in2'] },
  { unit: 'kPa', kind: 'pressure', words: ['kpa'] },
  { unit: 'bar', kind: 'pressure', words: ['bar', 'bars'] },
]

const BY_WORD = new Map(UNIT_WORDS.flatMap(({ unit, kind, words }) => words.map((word) => [word, { unit, kind }] as const)))

/** The unit a piece of text names, or null; case and surrounding space do not matter. */
export function findUnit(text: string): { unit: QuantityUnit; kind: QuantityKind } | null {
  return BY_WORD.get(text.trim().toLowerCase().replace(/\s+/g, ' ')) ?? null
}
