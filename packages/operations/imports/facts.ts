/** A value as it stands in a column; days are 'YYYY-MM-DD'. */
export type Value = string | number | boolean | null
/** One fact: the columns that only make sense together, as the earliest and latest day of a beginning. */
export type Fact = Record<string, Value>
export type Facts = Record<string, Fact>
export type Kind = 'customer' | 'contact' | 'site' | 'softener' | 'tank' | 'bed' | 'test'
export type EnteredValues = Record<string, { value: number; unit: string }>

/** Each kind's facts, with the columns of each. */
const FACT_COLUMNS: Record<Kind, Record<string, readonly string[]>> = {
  customer: { name: ['name'], reference: ['reference'] },
  contact: {
    name: ['name'],
    phone: ['phone'],
    email: ['email'],
    consentEmail: ['consentEmail'],
    consentPhone: ['consentPhone'],
    consentText: ['consentText'],
    consentLetter: ['consentLetter'],
  },
  site: {
    label: ['label'],
    street: ['street'],
    town: ['town'],
    region: ['region'],
    postcode: ['postcode'],
    accessNotes: ['accessNotes'],
    coordinates: ['latitude', 'longitude'],
    supply: ['waterSupplyId'],
  },
  softener: {
    label: ['label'],
    location: ['location'],
    notes: ['notes'],
    installed: ['installedEarliest', 'installedLatest', 'installedAsWritten'],
  },
  tank: { tankSize: ['diameterIn', 'heightIn', 'nominalGrains', 'sizeAsWritten'] },
  bed: {
    resinKind: ['resinKind'],
    volumeFt3: ['volumeFt3'],
    began: ['beganEarliest', 'beganLatest', 'beganAsWritten'],
    lastSeenDay: ['lastSeenDay'],
    ended: ['endedEarliest', 'endedLatest', 'endCause'],
  },
  test: {
    hardness: ['hardnessGpg'],
    iron: ['ironMgL'],
    freeChlorine: ['freeChlorineMgL'],
    totalChlorine: ['totalChlorineMgL'],
    day: ['day'],
  },
}

/** What a note calls a fact. */
export const FACT_WORDS: Record<string, string> = {
  name: 'name',
  reference: 'customer number',
  phone: 'phone',
  email: 'e-mail',
  consentEmail: 'consent to e-mail',
  consentPhone: 'consent to calls',
  consentText: 'consent to texts',
  consentLetter: 'consent to letters',
  label: 'label',
  street: 'street',
  town: 'town',
  region: 'region',
  postcode: 'postcode',
  accessNotes: 'access notes',
  coordinates: 'coordinates',
  supply: 'water supply',
  location: 'position',
  notes: 'notes',
  installed: 'installation',
  tankSize: 'tank size',
  resinKind: 'resin kind',
  volumeFt3: 'resin volume',
  began: 'beginning of the bed',
  lastSeenDay: 'day last seen',
  ended: 'end of the earlier bed',
  hardness: 'hardness',
  iron: 'iron',
  freeChlorine: 'chlorine',
  totalChlorine: 'total chlorine',
  day: 'day of the test',
}

/** True where nothing is known: no column holds a value. A resin kind "unknown" is no value. */
export function isUnknown(fact: Fact | undefined): boolean {
  return fact === undefined || Object.values(fact).every((value) => value === null || value === 'unknown')
}

/** True where two facts say the same, column by column. */
export function sameFact(one: Fact | undefined, other: Fact | undefined): boolean {
  if (isUnknown(one) || isUnknown(other)) return isUnknown(one) && isUnknown(other)
  const keys = new Set([...Object.keys(one ?? {}), ...Object.keys(other ?? {})])
  return [...keys].every((key) => (one?.[key] ?? null) === (other?.[key] ?? null))
}

/** Picks a kind's facts out of a stored row whose days are already text. */
export function factsOf(kind: Kind, row: Record<string, unknown>): Facts {
  return Object.fromEntries(
    Object.entries(FACT_COLUMNS[kind]).map(([fact, columns]) => [
      fact,
      Object.fromEntries(columns.map((column) => [column, (row[column] ?? null) as Value])),
    ]),
  )
}

/** All columns of some facts in one record. */
export function columnsOf(facts: Facts): Record<string, Value> {
  return Object.assign({}, ...Object.values(facts)) as Record<string, Value>
}
