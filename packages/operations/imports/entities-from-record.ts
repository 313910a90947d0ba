import { asOtherPhone } from '@almanac/records/contact-phones'
import type { Disinfectant } from '@almanac/records/disinfectant'
import type { ImportKind } from '@almanac/records/import-facts'
import type { DayReading, EarlierBed, ImportedRecord } from '@almanac/service-rules/import/import-types'
import { matchKeys } from '@almanac/service-rules/import/match-keys'
import type { EnteredValues, ImportedFact, ImportedFacts } from './facts.ts'

/** What a row wants to be known of one thing. `parents` are the keys of what it hangs on. */
export type DesiredEntity = {
  kind: ImportKind
  key: string
  parents: { customer: string; site: string; softener: string }
  /** First line that speaks of it, and the line each fact was taken from. */
  line: number
  lines: Record<string, number>
  facts: ImportedFacts
  entered: EnteredValues
  position: number
  /** For a bed: the fillings before it that the row tells of, the oldest first, and whether the beginning is that of a rebed. */
  earlier: EarlierBed[]
  isRebed: boolean
  /** For a bed that counts as seen, or a reading that counts as taken, on the day the list was right, not on one that its own row tells. */
  byList: string | null
}

/** The name of the water supply a row speaks of and what is in its water, beside its things. */
export type RowWants = { things: DesiredEntity[]; supplyName: string | null; disinfectant: Disinfectant | null; notes: string[] }

const span = (prefix: 'installed' | 'began', day: DayReading | null): ImportedFact | null =>
  day && { [`${prefix}Earliest`]: day.earliestDay, [`${prefix}Latest`]: day.latestDay, [`${prefix}AsWritten`]: day.asWritten }

const one = (column: string, value: string | number | boolean | null): ImportedFact | null =>
  value === null || value === '' ? null : { [column]: value }

/** Seen within a span, a bed is only sure to have lived to the span's first day; never before it began. */
function seenDay(record: ImportedRecord): string | null {
  const { lastSeen, began } = record.bed
  if (!lastSeen) return null
  return began && lastSeen.earliestDay < began.earliestDay ? began.earliestDay : lastSeen.earliestDay
}

/** The day the list was right counts for a bed that no cell of the row was seen by, unless it went in later. */
function seenByList({ bed }: ImportedRecord, listRightOn: string | null): string | null {
  if (bed.lastSeen || !listRightOn) return null
  return bed.began && bed.began.earliestDay > listRightOn ? null : listRightOn
}

function tankFact(record: ImportedRecord): ImportedFact | null {
  const { tank } = record.softener
  if (!tank) return null
  return { diameterIn: tank.diameterIn, heightIn: tank.heightIn, nominalGrains: tank.nominalGrains, sizeAsWritten: tank.asWritten }
}

/** One without the other is no place. */
function coordinatesOf({ latitude, longitude }: ImportedRecord['site']): ImportedFact | null {
  return latitude === null || longitude === null ? null : { latitude, longitude }
}

/**
 * A list's reading is as old as the list: of the last visit, else of the day the list was right, else of when the softener or its resin went in.
 *
 * The chlorine of a list is free chlorine, except on chloramine, where a kit shows the total. Common practice, no source. */
function testFacts(
  record: ImportedRecord,
  listRightOn: string | null,
): { facts: Record<string, ImportedFact | null>; entered: EnteredValues } {
  const { hardness, iron, chlorine, disinfectant } = record.water
  const chlorineFact = disinfectant === 'chloramine' ? 'totalChlorine' : 'freeChlorine'
  const { bed, softener } = record
  const seen = bed.lastSeen?.latestDay ?? listRightOn ?? bed.began?.latestDay ?? softener.installed?.latestDay ?? null
  const readings = { hardness, iron, [chlorineFact]: chlorine }
  const entered = Object.entries(readings).flatMap(([fact, reading]) =>
    reading ? [[fact, { value: reading.enteredValue, unit: reading.enteredUnit }] as const] : [],
  )
  if (entered.length === 0) return { facts: {}, entered: {} }
  return {
    facts: {
      hardness: one('hardnessGpg', hardness?.hardnessGpg ?? null),
      iron: one('ironMgL', iron?.mgL ?? null),
      [chlorineFact]: one(`${chlorineFact}MgL`, chlorine?.mgL ?? null),
      day: one('day', seen),
    },
    entered: Object.fromEntries(entered),
  }
}

/** What one understood row wants: its customer, contact, site, softener, tanks, beds and water test. Silent cells want nothing. */
export function entitiesFromRecord(record: ImportedRecord, line: number, listRightOn: string | null = null): RowWants {
  const keys = matchKeys(record)
  const { contact, site, softener, bed, water } = record
  const things: DesiredEntity[] = []
  const want = (kind: ImportKind, key: string, wanted: Record<string, ImportedFact | null>, more: Partial<DesiredEntity> = {}) => {
    const facts = Object.fromEntries(Object.entries(wanted).filter((entry): entry is [string, ImportedFact] => entry[1] !== null))
    const parents = { customer: keys.customerKey, site: keys.siteKey, softener: keys.softenerKey }
    const lines = Object.fromEntries(Object.keys(facts).map((fact) => [fact, line]))
    things.push({ kind, key, parents, line, lines, facts, entered: {}, position: 1, earlier: [], isRebed: false, byList: null, ...more })
  }
  want('customer', keys.customerKey, { name: one('name', record.customerName), reference: one('reference', record.referenceNumber) })
  const { consent } = contact
  const reach = {
    phone: one('phone', contact.phone),
    otherPhone: one('otherPhone', asOtherPhone(contact.otherPhones)),
    email: one('email', contact.email),
    consentEmail: one('consentEmail', consent.email),
    consentPhone: one('consentPhone', consent.phone),
    consentText: one('consentText', consent.text),
    consentLetter: one('consentLetter', consent.letter),
  }
  if (contact.name || Object.values(reach).some((fact) => fact !== null))
    want('contact', `${keys.customerKey}|contact`, { name: one('name', contact.name ?? record.customerName), ...reach })
  want('site', keys.siteKey, {
    label: one('label', site.street ?? record.customerName),
    street: one('street', site.street),
    town: one('town', site.town),
    region: one('region', site.region),
    postcode: one('postcode', site.postcode),
    accessNotes: one('accessNotes', site.accessNotes),
    coordinates: coordinatesOf(site),
  })
  want('softener', keys.softenerKey, {
    label: one('label', softener.label),
    location: one('location', softener.tankPosition),
    notes: one('notes', record.notes),
    installed: span('installed', softener.installed),
  })
  const volumeFt3 = bed.resinVolume?.resinVolumeFt3 ?? softener.tank?.resinVolumeFt3 ?? null
  const entered: EnteredValues = bed.resinVolume
    ? { volume: { value: bed.resinVolume.enteredValue, unit: bed.resinVolume.enteredUnit } }
    : {}
  for (let position = 1; position <= softener.tankCount; position++) {
    want('tank', `${keys.softenerKey}|tank:${position}`, { tankSize: tankFact(record) }, { position })
    const byList = seenByList(record, listRightOn)
    const filling = {
      resinKind: one('resinKind', bed.resinKind),
      volumeFt3: one('volumeFt3', volumeFt3),
      began: span('began', bed.began),
      lastSeenDay: one('lastSeenDay', seenDay(record) ?? byList),
    }
    const isRebed = bed.beganFrom === 'notes-rebed' || bed.beganFrom === 'resin-column'
    want('bed', `${keys.softenerKey}|bed:${position}`, filling, { position, entered, earlier: bed.earlier, isRebed, byList })
  }
  const test = testFacts(record, listRightOn)
  if (Object.keys(test.facts).length > 0)
    want('test', `${keys.softenerKey}|test`, test.facts, { entered: test.entered, byList: bed.lastSeen ? null : listRightOn })
  const notes: string[] = []
  if (!site.street) notes.push('The row has no street, so the site is named after the customer.')
  if (water.disinfectant && !water.supplyName && water.disinfectant !== 'none')
    notes.push('The disinfectant was not kept, because the row names no water supply. Enter it on the supply’s own page.')
  return { things, supplyName: water.supplyName, disinfectant: water.disinfectant, notes }
}
