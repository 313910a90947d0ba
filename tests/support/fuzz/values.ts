import type * as z from 'zod'
import type { ZodDef } from '../zod-def.ts'
import type { Chance } from './random.ts'

/** Numbers at the edges of what is kept: of a column, of a double, of a whole number in a double. */
const NUMBERS = [0, -0, 1, -1, 0.5, 1e-320, 2_147_483_647, 2_147_483_648, -2_147_483_649, 9_007_199_254_740_992, 1e308, -1e308]
const TEXTS = [
  ...[
    '',
    ' ',
    'a\u0000b',
    '\ud800',
    '\udc00x',
    '\u202egnp',
    '﷽'.repeat(40),
    '👩‍🚒',
    '\u0301'.repeat(50),
    'NaN',
    '-1',
    '1e999',
    '½',
    '1,200',
  ],
  ...[
    "'; drop table site; --",
    '%',
    '_%\\',
    '$1',
    '{{7*7}}',
    '<script>alert(1)</script>',
    '../../etc/passwd',
    '=cmd()',
    '\r\nx: y',
    'x'.repeat(5000),
  ],
]
const DAYS = [
  '0000-01-01',
  '0001-01-01',
  '1900-02-29',
  '2026-02-30',
  '2026-11-29',
  '2027-06-15',
  '9999-12-31',
  '1000-01-01',
  '9899-12-31',
  '+012026-01-01',
  '2026-1-1',
  '',
]
const INSTANTS = [
  '0000-01-01T00:00:00Z',
  '2026-11-29T16:00:00.000Z',
  '9999-12-31T23:59:59.999Z',
  '1000-01-01T00:00:00Z',
  '9899-12-31T23:59:59.999Z',
  '2026-11-29T24:00:00Z',
  '2026-11-29 16:00',
  '-271821-04-20T00:00:00Z',
]
const FAIR_TRIES = 200
const NEVER = 'ffffffff-ffff-7fff-bfff-ffffffffffff'

/** What is of another kind than anything asked for. */
export function oddValue(chance: Chance): unknown {
  return chance.one<() => unknown>([
    () => null,
    () => [],
    () => ({}),
    () => true,
    () => chance.one(TEXTS),
    () => chance.one(NUMBERS),
    () => JSON.parse('{"__proto__":{"role":"owner"},"constructor":{"prototype":{}}}'),
    () => Array.from({ length: 300 }, () => chance.one(NUMBERS)),
    () => JSON.parse(`${'['.repeat(20)}${']'.repeat(20)}`),
  ])()
}

function textOf(def: ZodDef, chance: Chance, ids: readonly string[]): string {
  if (def.format === 'uuid' || def.format === 'guid') return chance.happens(0.9) ? chance.one(ids) : chance.one([NEVER, 'no-id', ''])
  if (def.format === 'date') return chance.one(DAYS)
  if (def.format === 'datetime') return chance.one(INSTANTS)
  return chance.one([
    ...TEXTS,
    '07:30',
    '24:00',
    ...['2026-12', '2027-03', '1000-01', '9899-12'],
    '10x54',
    'gpg',
    'mg/L',
    'Hanna',
    'by the door',
    'hanna@vale.example',
    'tank:10x54',
    'lifting',
    // A sum, as of a picture.
    'e3b0c442'.repeat(8),
  ])
}

/** How a value is made: from records that exist; `fair` keeps to what the schema takes, so that the handler behind it is reached. */
type Making = { ids: readonly string[]; fair: boolean }

const makes = (type: string): ((def: ZodDef, chance: Chance, ids: readonly string[]) => unknown) | undefined => {
  if (type === 'string') return textOf
  if (type === 'number' || type === 'int') return (_, chance) => (chance.happens(0.6) ? chance.below(60) : chance.one(NUMBERS))
  if (type === 'boolean') return (_, chance) => chance.happens(0.5)
  if (type === 'enum') return (def, chance) => chance.one(Object.values(def.entries ?? {}))
  if (type === 'literal') return (def, chance) => chance.one(def.values ?? [])
  return undefined
}

/** What `make` gives; where it is to be fair the first that the schema takes, if one comes. */
function fairly(schema: z.core.$ZodType, { fair }: Making, make: () => unknown): unknown {
  let value = make()
  for (let tries = 0; fair && tries < FAIR_TRIES && !(schema as z.ZodType).safeParse(value).success; tries++) value = make()
  return value
}

/** A new id, from the seed: a command is one of its own. */
function freshId(chance: Chance): string {
  const hex = Array.from({ length: 32 }, () => chance.below(16).toString(16)).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20)}`
}

/** A value for a schema: of its shape, at the edges of its ranges; unless it is to be fair with a field in twenty-five of another kind or left out. */
export function valueFor(schema: z.core.$ZodType | undefined, chance: Chance, how: Making): unknown {
  if (!schema) return undefined
  if (!how.fair && chance.happens(0.02)) return oddValue(chance)
  const def = schema._zod.def as unknown as ZodDef
  const of = (inner: z.core.$ZodType | undefined) => valueFor(inner, chance, how)
  const leaf = makes(def.type)
  if (leaf) return fairly(schema, how, () => leaf(def, chance, how.ids))
  switch (def.type) {
    case 'object':
      return Object.fromEntries(
        Object.entries(def.shape ?? {})
          // Nobody makes up a list's next place.
          .filter(([key]) => (how.fair ? key !== 'cursor' : !chance.happens(0.02)))
          .map(([key, inner]) => [key, how.fair && key === 'commandId' ? freshId(chance) : of(inner)]),
      )
    case 'array':
      return fairly(schema, how, () =>
        Array.from({ length: chance.one(how.fair ? [1, 1, 2, 3] : [0, 1, 1, 2, 3, 12]) }, () => of(def.element)),
      )
    case 'tuple':
      return (def.items ?? []).map(of)
    case 'record':
      return fairly(schema, how, () => ({ [chance.one(TEXTS)]: of(def.valueType) }))
    case 'union':
      return of(chance.one(def.options ?? []))
    case 'nullable':
      return chance.happens(0.3) ? null : of(def.innerType)
    case 'optional':
    case 'default':
    case 'prefault':
      return chance.happens(how.fair ? 0.6 : 0.3) ? undefined : of(def.innerType)
    case 'pipe':
      return of(def.in)
    default:
      return def.innerType ? of(def.innerType) : oddValue(chance)
  }
}
