import type { ImportRowView } from '@almanac/contract/imports'
import { oneOf } from '@almanac/records/choices'
import { endCauses, endCauseWords } from '@almanac/records/end-cause'
import { factWords } from '@almanac/records/import-facts'
import { recordedResinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { type DayDisplay, formatDays } from '@almanac/units/format-day'
import { type NumberDisplay, showWhole } from '@almanac/units/format-number'
import { columnsOf, type ImportedFact, isUnknown, type Value } from './facts.ts'
import type { LedgerEntry } from './ledger.ts'

type Shown = { display: DayDisplay & NumberDisplay; supplyName: (id: string) => string | undefined }

const number = (value: Value | undefined, unit: string) => (typeof value === 'number' ? `${Number(value.toPrecision(3))} ${unit}` : '')
const day = (from: Value | undefined, until: Value | undefined, display: DayDisplay) => {
  const [first, last] = [from ?? until, until ?? from]
  return typeof first === 'string' && typeof last === 'string' ? formatDays(first, last, display) : ''
}

/** How each fact reads; all others are words as they stand. */
const WRITE: Record<string, (fact: ImportedFact, shown: Shown) => string> = {
  began: (fact, { display }) => day(fact.beganEarliest, fact.beganLatest, display),
  installed: (fact, { display }) => day(fact.installedEarliest, fact.installedLatest, display),
  ended: (fact, { display }) => {
    const cause = oneOf(endCauses, String(fact.endCause ?? ''))
    return [day(fact.endedEarliest, fact.endedLatest, display), cause && endCauseWords[cause].toLowerCase()].filter(Boolean).join(', ')
  },
  lastSeenDay: (fact, { display }) => day(fact.lastSeenDay, null, display),
  day: (fact, { display }) => day(fact.day, null, display),
  hardness: (fact) => number(fact.hardnessGpg, 'gpg'),
  iron: (fact) => number(fact.ironMgL, 'mg/L'),
  freeChlorine: (fact) => number(fact.freeChlorineMgL, 'mg/L'),
  totalChlorine: (fact) => number(fact.totalChlorineMgL, 'mg/L'),
  volumeFt3: (fact) => number(fact.volumeFt3, 'ft³'),
  tankSize: (fact, { display }) =>
    typeof fact.diameterIn === 'number'
      ? `${fact.diameterIn} × ${fact.heightIn ?? '?'} in`
      : typeof fact.nominalGrains === 'number'
        ? `${showWhole(fact.nominalGrains, display)} grain`
        : String(fact.sizeAsWritten ?? ''),
  resinKind: (fact) => {
    const kind = oneOf(recordedResinKinds, String(fact.resinKind ?? ''))
    return kind && kind !== 'unknown' ? resinKindWords[kind] : ''
  },
  coordinates: ({ latitude, longitude }) => (typeof latitude === 'number' ? `${latitude}, ${longitude}` : ''),
  supply: (fact, { supplyName }) => (typeof fact.waterSupplyId === 'string' ? (supplyName(fact.waterSupplyId) ?? 'a new supply') : ''),
}

function factText(fact: string, value: ImportedFact | undefined, shown: Shown): string {
  if (value === undefined || isUnknown(value)) return ''
  const write = WRITE[fact]
  if (write) return write(value, shown)
  const [only] = Object.values(columnsOf({ [fact]: value }))
  return typeof only === 'boolean' ? (only ? 'yes' : 'no') : String(only ?? '')
}

/** What an import changes of records that were there, fact by fact: the old value and the new one, as they are read. */
export function changesOf(entries: readonly LedgerEntry[], shown: Shown): ImportRowView['changes'] {
  return entries.flatMap(({ was, wrote }) =>
    Object.keys(was ?? {}).map((fact) => ({
      what: factWords[fact] ?? fact,
      from: factText(fact, was?.[fact], shown),
      to: factText(fact, wrote[fact], shown),
    })),
  )
}

/** The supplies that entries speak of. */
export const suppliesIn = (entries: readonly LedgerEntry[]): string[] =>
  entries.flatMap(({ was, wrote }) =>
    [was?.supply?.waterSupplyId, wrote.supply?.waterSupplyId].flatMap((id) => (typeof id === 'string' ? [id] : [])),
  )
