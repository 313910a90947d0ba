import type { ImportKept, ImportUndone } from '@almanac/contract/imports'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { readThings, readTouched, type TouchedBy } from '@almanac/database/read/import-touched'
import { factWords, type ImportKind } from '@almanac/records/import-facts'
import { columnsOf, factsOf, type ImportedFacts, sameFact } from './facts.ts'
import type { LedgerEntry } from './ledger.ts'
import { type ConsentPatch, KINDS, type Patch } from './plan-types.ts'
import { CONSENTS } from './write-consents.ts'

export type LedgerRow = { customerId: string | null; siteId: string | null; softenerId: string | null; entries: LedgerEntry[] }
type Entry = LedgerEntry & { unit: LedgerRow }

export type UndoPlan = {
  archive: Record<ImportKind, string[]>
  patches: Record<ImportKind, Patch[]>
  consents: ConsentPatch[]
  siteIds: Set<string>
  bedIds: Set<string>
  summary: ImportUndone
}

/** Why a made thing must stay: what hangs on it, or what became of what it hangs on. */
type StayReason = TouchedBy | 'edited' | 'site-has-job' | 'softener-stays' | 'site-stays'
const STANDING: Readonly<Record<StayReason, string>> = {
  job: 'it has a job',
  agreement: 'it has an agreement',
  valve: 'a valve was added',
  'pre-treatment': 'pre-treatment was added',
  'water-test': 'a water test was added',
  tank: 'a tank was added',
  bed: 'a newer bed is in it',
  inspection: 'its bed was inspected',
  reminder: 'a reminder was sent',
  softener: 'another softener is there',
  contact: 'a contact was added',
  'changed-contact': 'a contact was changed or added',
  tenure: 'it has a new customer',
  site: 'the customer has another site',
  edited: 'it was edited later',
  'site-has-job': 'its site has a job',
  'softener-stays': 'a softener there stays',
  'site-stays': 'a site stays',
}

const KEPT_SHOWN = 200
const ofUnit = (kind: ImportKind) => kind === 'softener' || kind === 'tank' || kind === 'bed' || kind === 'test'

function plain(row: Record<string, unknown>): Record<string, unknown> {
  const consents = (row.consents ?? []) as { channel: string; granted: boolean }[]
  const asked = Object.entries(CONSENTS).map(([column, channel]) => [
    column,
    consents.find((one) => one.channel === channel)?.granted ?? null,
  ])
  const days = Object.entries(row).map(([key, value]) => [key, value instanceof Date ? dayOf(value) : value])
  return { ...Object.fromEntries(days), ...Object.fromEntries(asked) }
}

/** Works out what undoing a batch takes back: what it made and nobody touched since, and values that still stand as it wrote them. */
export async function planUndo(tx: Tx, companyId: string, batchId: string, rows: readonly LedgerRow[]): Promise<UndoPlan> {
  const entries: Entry[] = rows.flatMap((unit) => unit.entries.map((entry) => ({ ...entry, unit })))
  const made = entries.filter((entry) => entry.was === null)
  const idsOf = (kind: ImportKind, among = entries) => among.filter((entry) => entry.kind === kind).map((entry) => entry.id)
  const present = new Map<string, { id: string; version: number } & Record<string, unknown>>()
  for (const kind of KINDS) for (const [id, row] of await readThings(tx, companyId, kind, idsOf(kind))) present.set(id, row)
  const byKind = <T>() => Object.fromEntries(KINDS.map((kind) => [kind, [] as T[]])) as unknown as Record<ImportKind, T[]>
  const plan: UndoPlan = {
    ...{ archive: byKind<string>(), patches: byKind<Patch>(), consents: [], siteIds: new Set(), bedIds: new Set() },
    summary: { archived: 0, restored: 0, kept: 0, keptExamples: [] },
  }
  const keep = (kept: ImportKept) => {
    plan.summary.kept++
    if (plan.summary.keptExamples.length < KEPT_SHOWN) plan.summary.keptExamples.push(kept)
  }
  const touched = await readTouched(tx, companyId, batchId, {
    softeners: idsOf('softener', made),
    sites: idsOf('site', made),
    customers: idsOf('customer', made),
  })
  const standing = whyStanding(made, present, touched)
  for (const entry of made) {
    if (!present.has(entry.id)) continue
    const why = standing.get(entry.id)
    if (!why) plan.archive[entry.kind].push(entry.id)
    else if (entry.kind === 'softener' || entry.kind === 'site' || entry.kind === 'customer')
      keep({ kind: entry.kind, siteId: entry.unit.siteId, why: `The ${entry.kind} stays, because ${STANDING[why]}.` })
    if (!why && entry.kind === 'bed') plan.bedIds.add(entry.id)
    if (!why && entry.unit.siteId) plan.siteIds.add(entry.unit.siteId)
  }
  plan.summary.archived = plan.archive.customer.length + plan.archive.site.length + plan.archive.softener.length
  for (const entry of entries) if (entry.was !== null) restore(plan, entry, entry.was, present.get(entry.id), keep)
  return plan
}

/** Why a made thing must stay. A softener stays or goes with its tanks, beds and tests; a site stays with a softener, a customer with a site. */
function whyStanding(
  made: readonly Entry[],
  present: ReadonlyMap<string, { version: number }>,
  touched: Awaited<ReturnType<typeof readTouched>>,
): Map<string, StayReason> {
  const units = new Map<string, StayReason>(touched.softeners)
  const sites = new Map<string, StayReason>(touched.sites)
  const customers = new Map<string, StayReason>(touched.customers)
  const parts = new Set(made.filter((entry) => ofUnit(entry.kind)).map((entry) => entry.unit.softenerId))
  for (const entry of made) {
    const row = present.get(entry.id)
    if (!row || row.version === 1) continue
    const why = 'edited'
    if (ofUnit(entry.kind) && entry.unit.softenerId) units.set(entry.unit.softenerId, units.get(entry.unit.softenerId) ?? why)
    else if (entry.kind === 'site') sites.set(entry.id, sites.get(entry.id) ?? why)
    else if (entry.unit.customerId) customers.set(entry.unit.customerId, customers.get(entry.unit.customerId) ?? why)
  }
  for (const { unit } of made) {
    if (!unit.siteId) continue
    if (unit.softenerId && sites.get(unit.siteId) === 'job' && parts.has(unit.softenerId) && !units.has(unit.softenerId))
      units.set(unit.softenerId, 'site-has-job')
  }
  for (const { unit } of made)
    if (unit.softenerId && units.has(unit.softenerId) && unit.siteId && !sites.has(unit.siteId)) sites.set(unit.siteId, 'softener-stays')
  for (const { unit } of made)
    if (unit.siteId && sites.has(unit.siteId) && unit.customerId && !customers.has(unit.customerId))
      customers.set(unit.customerId, 'site-stays')
  const standing = new Map<string, StayReason>()
  for (const { id, kind, unit } of made) {
    const why = ofUnit(kind) ? units.get(unit.softenerId ?? '') : kind === 'site' ? sites.get(id) : customers.get(unit.customerId ?? '')
    if (why) standing.set(id, why)
  }
  return standing
}

function restore(
  plan: UndoPlan,
  entry: Entry,
  was: ImportedFacts,
  row: ({ id: string; version: number } & Record<string, unknown>) | undefined,
  keep: (kept: ImportKept) => void,
): void {
  const { siteId } = entry.unit
  if (!row || Object.keys(was).length === 0) return
  const stands = factsOf(entry.kind, plain(row))
  const back: ImportedFacts = {}
  for (const [fact, before] of Object.entries(was)) {
    if (sameFact(stands[fact], entry.wrote[fact])) back[fact] = before
    else keep({ kind: entry.kind, siteId, why: `The ${factWords[fact] ?? fact} stays, because it was edited later.` })
  }
  if (Object.keys(back).length === 0) return
  plan.summary.restored += Object.keys(back).length
  const sources = Object.fromEntries(Object.keys(back).map((fact) => [fact, entry.sources?.[fact] ?? null]))
  plan.patches[entry.kind].push({
    ...{ id: row.id, version: row.version, columns: { ...columnsOf(stands), ...columnsOf(back) }, entered: {} },
    sources: entry.kind === 'tank' || entry.kind === 'bed' ? sources : {},
  })
  if (entry.kind === 'contact')
    for (const [column, channel] of Object.entries(CONSENTS))
      if (back[column]) plan.consents.push({ contactId: row.id, channel, granted: back[column]?.[column] === true })
  if (entry.kind === 'bed') plan.bedIds.add(row.id)
  if (siteId) plan.siteIds.add(siteId)
}
