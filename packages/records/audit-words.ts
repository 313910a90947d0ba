/** Kinds of record that the audit trail speaks of, as people read them. */
export const auditEntityWords: Readonly<Record<string, string>> = {
  absence: 'Absence',
  agreement: 'Agreement',
  bed: 'Bed',
  call: 'Call',
  'call-back': 'Call-back',
  'calendar-feed': 'Calendar address',
  colleague: 'Person',
  company: 'Company',
  'company-settings': 'Company settings',
  consent: 'Consent',
  contact: 'Contact',
  'crew-day': 'Day sheet',
  customer: 'Customer',
  export: 'Export',
  'firm-figure': 'Company figure',
  'import-batch': 'Import',
  job: 'Job',
  message: 'Message',
  plan: 'Plan',
  'pre-treatment': 'Pre-filter',
  reminder: 'Reminder',
  'set-aside': 'Tablet entry',
  site: 'Site',
  softener: 'Softener',
  'stock-item': 'Stock item',
  town: 'Town',
  vehicle: 'Vehicle',
  visit: 'Visit',
  'water-supply': 'Water supply',
  'water-test': 'Water test',
  'window-offer': 'Offered times',
}

/** Actions whose stored word is not the one people read; others are read as they stand ("changed"). */
const ACTION_WORDS: Readonly<Record<string, string>> = {
  'put away': 'archived',
  'softener taken down': 'added',
  'customer added': 'added',
  'changed hands': 'has a new customer',
  'put back to usual': 'reset to default',
  'handed over': 'started',
  'file kept as a draft': 'file read',
  'lead changed': 'lead time changed',
  'material set': 'materials set aside',
  'materials given': 'materials handed over',
  'material taken back': 'materials taken back',
  'called-off': 'called off',
  'under-way': 'under way',
  begun: 'added',
  given: 'given (yes)',
  refused: 'refused (no)',
  'signs in': 'linked to a sign-in',
  'taken back': 'removed',
}

/** What was done to what: "Site changed". `operation` as stored: "customers.change-site: changed". */
export function auditTitle(operation: string, entity: string): string {
  const action = operation.slice(operation.indexOf(': ') + 2)
  return `${auditEntityWords[entity] ?? entity} ${ACTION_WORDS[action] ?? action}`
}

/** Facts that changes name, where their stored name does not read well. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  label: 'name',
  accessNotes: 'access notes',
  visitHours: 'visiting hours',
  place: 'place on the map',
  waterSupplyId: 'water supply',
  peopleServed: 'people served',
  valveCardId: 'valve type',
  tankSize: 'tank size',
  resinKind: 'resin',
  tubeCut: 'tube cut length',
  began: 'resin put in',
  lastSeenDay: 'last seen working',
  reference: 'customer number',
  volumeFt3: 'load, ft³',
  weightLb: 'load, lb',
  leadDays: 'lead time, days',
  bagFt3: 'bag, ft³',
  tubeOdIn: 'tube diameter, in',
  priceMinor: 'price, in cents',
  left: 'retired',
  otherPhone: 'other phones',
  otherPhones: 'other phones',
}
/** A fact by the words people read: `peopleServed` is "people served". */
export const auditFieldWord = (field: string): string =>
  FIELD_WORDS[field] ?? field.replace(/([a-z])([A-Z])/g, (_, a: string, b: string) => `${a} ${b.toLowerCase()}`)
