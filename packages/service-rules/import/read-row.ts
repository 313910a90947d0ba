import { MOST_OTHER_PHONES } from '@almanac/records/contact-phones'
import { countInSentence } from '@almanac/units/format-number'
import { cleanCell, isSilent } from './clean-cell.ts'
import { earlierBeds } from './earlier-beds.ts'
import { describeField, type ImportField } from './fields.ts'
import { asksForSilence, findDecisions } from './find-decisions.ts'
import { findInNotes, type NoteFact } from './find-in-notes.ts'
import { columnName, type GatheredCell, gatherCells } from './gather-cells.ts'
import { knownOf } from './hardness-by-supply.ts'
import type {
  BedBeganFrom,
  ColumnMapping,
  ConsentReading,
  DayReading,
  ImportedRecord,
  RowAssumption,
  RowOptions,
  RowProblem,
  RowReading,
} from './import-types.ts'
import { normalisePhone } from './normalise.ts'
import { readConcentration } from './read-concentration.ts'
import { readConsent, readEmail, readPhones, readYesNo, refusedConsent, silentConsent } from './read-contact.ts'
import { readDay } from './read-day.ts'
import { readDegrees } from './read-degrees.ts'
import { readDisinfectant } from './read-disinfectant.ts'
import { readHardness } from './read-hardness.ts'
import { readPlainNumber } from './read-number.ts'
import { readResinKind, readResinVolume } from './read-resin.ts'
import { readTank } from './read-tank.ts'
import { type Reading, read, unreadable } from './reading.ts'
import { whyNobody } from './why-nobody.ts'

/** Characters that one field's columns may hold together: two of the longest cells of an upload. */
const LONGEST_JOINED = 8_000

/**
 * One row of a firm's file, understood or with everything that is wrong with it. A value that cannot be read leaves its cell empty and is listed, so that the customer is
 * not lost for it; a row without a name, or that is no customer's (a total, a title), is left out and listed.
 *
 * @param cells the row as text; an XLSX date as an ISO day, a number as its decimal text
 */
export function readRow(cells: readonly string[], mapping: ColumnMapping, options: RowOptions): RowReading {
  const gathered = gatherCells(cells, mapping)
  const tooLong = [...gathered].filter(([, { text }]) => text.length > LONGEST_JOINED)
  // Nothing more is weighed of such a row: a list may be two hundred columns wide, and all of them chosen as notes.
  if (tooLong.length > 0) return { ok: false, problems: tooLong.map(([field, cell]) => joinedTooLong(field, cell)) }
  const nobody = whyNobody(cells, gathered, mapping)
  if (nobody) return { ok: false, problems: [nobody] }
  const problems: RowProblem[] = []
  const assumptions: RowAssumption[] = []

  const text = (field: ImportField): string | null => gathered.get(field)?.text ?? null
  const value = <T>(field: ImportField, reader: (cell: GatheredCell) => Reading<T>): T | null => {
    const cell = gathered.get(field)
    if (!cell) return null
    const reading = reader(cell)
    if (!reading.ok) {
      problems.push({ kind: 'left-empty', column: cell.column, field, value: cell.text, reason: reading.reason })
      return null
    }
    for (const sentence of reading.assumptions) assumptions.push({ column: cell.column, field, sentence })
    return reading.value
  }
  const day = (field: ImportField): DayReading | null =>
    value(field, (cell) => readDay(cell.text, { ...options, dayOrder: cell.choice.dayOrder ?? 'undecided' }))

  const customerName = text('customerName')
  if (!customerName) problems.push(missingName(mapping))
  const knownHardness = knownOf(options.hardnessBySupply, text('supplyName'))
  const tank = value('tank', (cell) => readTank(cell.text, cell.choice.volumeUnit ?? null))
  const tankCount = value('tankCount', (cell) => readTankCount(cell.text))
  const resinVolume = value('resinVolume', (cell) => readResinVolume(cell.text, cell.choice.volumeUnit ?? null))
  const installed = day('installed')
  const bedBegan = day('bedBegan')
  const began = presentBed(bedBegan, installed, gathered.get('notes'), options, assumptions)
  const earlier = earlierBeds(began, installed ?? began.installed, began.rebeds, gathered.get('notes')?.text ?? '')
  for (const sentence of earlier.said) assumptions.push({ column: gathered.get('notes')?.column ?? '', field: 'notes', sentence })
  const lastSeen = sinceBegan(day('lastSeen'), began.day, gathered.get('lastSeen'), assumptions)
  const record: ImportedRecord = {
    referenceNumber: text('referenceNumber'),
    customerName: customerName ?? '',
    contact: {
      name: text('contactName'),
      ...phonesOf(value, (sentence) => assumptions.push({ column: gathered.get('phone')?.column ?? '', field: 'phone', sentence })),
      email: value('email', (cell) => readEmail(cell.text)),
      consent: asksForSilence(gathered) ? refusedConsent : consentOf(value),
    },
    site: {
      street: text('street'),
      town: text('town'),
      postcode: text('postcode'),
      region: text('region'),
      accessNotes: text('accessNotes'),
      latitude: value('latitude', (cell) => readDegrees(cell.text, 'latitude')),
      longitude: value('longitude', (cell) => readDegrees(cell.text, 'longitude')),
    },
    softener: {
      label: text('softenerLabel'),
      tankPosition: text('tankPosition'),
      tank,
      tankCount: tankCount ?? tank?.tankCount ?? 1,
      installed: installed ?? began.installed,
    },
    bed: {
      resinKind: value('resinKind', (cell) => readResinKind(cell.text)),
      resinVolume,
      began: began.day,
      beganFrom: began.from,
      earlier: earlier.beds,
      lastSeen,
    },
    water: {
      supplyName: text('supplyName'),
      disinfectant: value('disinfectant', (cell) => readDisinfectant(cell.text)),
      hardness: value('hardness', (cell) => readHardness(cell.text, cell.choice.hardnessUnit ?? null, knownHardness)),
      iron: value('iron', (cell) => readConcentration(cell.text, 'iron', cell.choice.concentrationUnit ?? null)),
      chlorine: value('chlorine', (cell) => readConcentration(cell.text, 'chlorine', cell.choice.concentrationUnit ?? null)),
    },
    notes: text('notes'),
  }
  if (!customerName) return { ok: false, problems }
  return { ok: true, record, assumptions, problems: [...problems, ...findDecisions(gathered)] }
}

/** True for a row in which no cell says anything: such a row is skipped, it is no problem. */
export function isEmptyRow(cells: readonly string[]): boolean {
  return cells.every((cell) => isSilent(cleanCell(cell)))
}

function joinedTooLong(field: ImportField, { column, text }: GatheredCell): RowProblem {
  const reason = `The columns chosen as "${describeField(field).title}" hold ${countInSentence(text.length)} characters together; at most ${countInSentence(LONGEST_JOINED)} are read. Shorten them, or choose fewer of them.`
  return { kind: 'left-out', column, field, value: `${text.slice(0, 100)}…`, reason }
}

function missingName(mapping: ColumnMapping): RowProblem {
  const column = mapping.columns.find((choice) => choice.field === 'customerName')?.column
  const reason =
    column === undefined ? 'No column is chosen for the customer name. Choose one.' : 'The customer name is empty. Type a name.'
  return { kind: 'left-out', column: column === undefined ? '' : columnName(mapping, column), field: 'customerName', value: '', reason }
}

function readTankCount(text: string): Reading<number> {
  const words: Record<string, number> = { single: 1, simplex: 1, twin: 2, duplex: 2, dual: 2, double: 2, triplex: 3, triple: 3 }
  const count = words[text.toLowerCase()] ?? readPlainNumber(text.replace(/\s*tanks?$/i, ''))
  if (count === null || !Number.isInteger(count) || count < 1 || count > 8)
    return unreadable(`"${text}" isn’t a number of tanks. Type 1 to 8, or leave it blank.`)
  return read(count)
}

/** The numbers of a row, from one cell or several; what is too many is said and left. The same number twice is one. */
function phonesOf(value: ValueReader, say: (sentence: string) => void): { phone: string | null; otherPhones: string[] } {
  const [first, second] = (['phone', 'otherPhone'] as const).map((field) => value(field, (cell) => readPhones(cell.text)) ?? [])
  const byNumber = Map.groupBy([...(first ?? []), ...(second ?? [])], normalisePhone)
  const [phone = null, ...others] = [...byNumber.values()].flatMap(([one]) => one ?? [])
  const otherPhones = others.slice(0, MOST_OTHER_PHONES)
  const more = others.slice(MOST_OTHER_PHONES)
  if (more.length > 0) say(`Of the phone numbers, the first ${1 + MOST_OTHER_PHONES} were kept. Not kept: ${more.join(', ')}.`)
  return { phone, otherPhones }
}

type ValueReader = <T>(field: ImportField, reader: (cell: GatheredCell) => Reading<T>) => T | null

/** The columns for one channel outrank the column for all. */
function consentOf(value: ValueReader): ConsentReading {
  const consent = { ...(value('consent', (cell) => readConsent(cell.text)) ?? silentConsent) }
  consent.email = value('mayEmail', (cell) => readYesNo(cell.text)) ?? consent.email
  consent.phone = value('mayPhone', (cell) => readYesNo(cell.text)) ?? consent.phone
  consent.letter = value('mayWrite', (cell) => readYesNo(cell.text)) ?? consent.letter
  return consent
}

/** A visit before the present bed went in saw another bed; the present one was seen no later than the day it began. */
function sinceBegan(
  lastSeen: DayReading | null,
  began: DayReading | null,
  cell: GatheredCell | undefined,
  assumptions: RowAssumption[],
): DayReading | null {
  if (!lastSeen || !began || !cell || lastSeen.latestDay >= began.earliestDay) return lastSeen
  const sentence = `Last seen (${cell.text}) is before the present bed was installed, so the bed counts as last seen then.`
  assumptions.push({ column: cell.column, field: 'lastSeen', sentence })
  return { ...began, asWritten: lastSeen.asWritten }
}

interface PresentBed {
  day: DayReading | null
  from: BedBeganFrom | null
  /** An installation found only in the notes. */
  installed: DayReading | null
  /** Every rebed the notes tell of. */
  rebeds: NoteFact[]
}

/** The latest known filling of the tank: its own column, else a rebed in the notes, else the installation. */
function presentBed(
  bedBegan: DayReading | null,
  installed: DayReading | null,
  notes: GatheredCell | undefined,
  options: RowOptions,
  assumptions: RowAssumption[],
): PresentBed {
  const facts = notes ? findInNotes(notes.text, { ...options, dayOrder: notes.choice.dayOrder ?? 'undecided' }).facts : []
  const latest = (kind: 'rebedded' | 'installed') =>
    facts
      .filter((fact) => fact.kind === kind)
      .reduce<(typeof facts)[number] | null>((best, fact) => (best && best.day.latestDay >= fact.day.latestDay ? best : fact), null)
  const rebeds = facts.filter((fact) => fact.kind === 'rebedded')
  const rebedded = latest('rebedded')
  const installedInNotes = latest('installed')
  const say = (sentence: string) => notes && assumptions.push({ column: notes.column, field: 'notes', sentence })
  if (bedBegan && !(rebedded && rebedded.day.earliestDay > bedBegan.latestDay))
    return { day: bedBegan, from: 'resin-column', installed: installedInNotes?.day ?? null, rebeds }
  if (rebedded && !(installed && installed.earliestDay > rebedded.day.latestDay)) {
    say(`The present bed was taken from the notes: "${rebedded.quote}".`)
    for (const sentence of rebedded.assumptions) say(sentence)
    return { day: rebedded.day, from: 'notes-rebed', installed: installedInNotes?.day ?? null, rebeds }
  }
  if (installed) return { day: installed, from: 'installed-column', installed: null, rebeds }
  if (!installedInNotes) return { day: null, from: null, installed: null, rebeds }
  say(`The installation was taken from the notes: "${installedInNotes.quote}".`)
  for (const sentence of installedInNotes.assumptions) say(sentence)
  return { day: installedInNotes.day, from: 'notes-installed', installed: installedInNotes.day, rebeds }
}
