/** What an import makes or changes. */
export type ImportKind = 'customer' | 'contact' | 'site' | 'softener' | 'tank' | 'bed' | 'test'

/** Each kind's facts, with the columns of each. */
export const factColumns: Record<ImportKind, Record<string, readonly string[]>> = {
  customer: { name: ['name'], reference: ['reference'] },
  contact: {
    name: ['name'],
    phone: ['phone'],
    otherPhone: ['otherPhone'],
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
export const factWords: Record<string, string> = {
  name: 'name',
  reference: 'customer number',
  phone: 'phone',
  otherPhone: 'other phones',
  email: 'email',
  consentEmail: 'consent to email',
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

/** Answers about being reached stand in a table of their own: they are facts of a contact, but no columns of it. */
const ELSEWHERE: ReadonlySet<string> = new Set(['consentEmail', 'consentPhone', 'consentText', 'consentLetter'])

/** All columns in which a kind's facts stand, by their names in code: what an import inserts, changes and compares is made from this. */
export function importColumns(kind: ImportKind): string[] {
  return Object.values(factColumns[kind])
    .flat()
    .filter((column) => !ELSEWHERE.has(column))
}
