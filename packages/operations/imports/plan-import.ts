import type { Tx } from '@almanac/database/client'
import { readImportLedger, readUndoneBatches } from '@almanac/database/read/import-ledger'
import { readPresentCustomers, readPresentSites, readPresentSofteners } from '@almanac/database/read/import-present'
import { mergedInto } from '@almanac/database/read/mergings'
import type { SupplyChoices } from '@almanac/service-rules/import/supply-choices'
import type { Display } from '@almanac/units/display'
import { findSame, type SameFound } from './find-same.ts'
import type { Outcomes } from './import-plan-context.ts'
import { foldLedger, type LedgerEntry } from './ledger.ts'
import { type CellProblem, emptyPlan, type ImportPlan } from './plan-types.ts'
import type { FileReading, StoredRow } from './read-rows.ts'
import { leaveUnusedSupplies, settleSupplies } from './settle-supplies.ts'
import { settleThings } from './settle-things.ts'

export type ImportPlanInput = {
  companyId: string
  fileName: string
  rows: readonly Pick<StoredRow, 'id' | 'line'>[]
  /** How what is said of a row is written. */
  display: Display
  /** What was read in them. */
  reading: FileReading
  /** What the names of supplies mean; those not in it mean the usual. */
  supplies: SupplyChoices
}

const keysOf = (reading: FileReading, kind: string) =>
  [...reading.wants.things.values()].filter((one) => one.kind === kind).map((one) => one.key)

type Followed = { id: string; matchKey: string; archived: boolean; isMerged?: boolean }

/** In the place of what was merged since, what it was merged into, under the key of the list: its lines speak of that now, and change no fact of it. */
async function followMerged<T extends Followed>(
  found: readonly T[],
  into: (goneIds: string[]) => Promise<Map<string, string>>,
  read: (ids: string[]) => Promise<T[]>,
): Promise<T[]> {
  const archived = found.filter((one) => one.archived).map((one) => one.id)
  const kept = archived.length === 0 ? new Map<string, string>() : await into(archived)
  if (kept.size === 0) return [...found]
  const live = new Map((await read([...new Set(kept.values())])).filter((one) => !one.archived).map((one) => [one.id, one]))
  return found.map((one) => {
    const other = live.get(kept.get(one.id) ?? '')
    return other ? { ...other, matchKey: one.matchKey, isMerged: true } : one
  })
}

/** What carries the file's own keys. */
async function readKnown(tx: Tx, companyId: string, reading: FileReading) {
  const customers = await followMerged(
    await readPresentCustomers(tx, companyId, keysOf(reading, 'customer')),
    (gone) => mergedInto(tx, companyId, gone),
    (ids) => readPresentCustomers(tx, companyId, ids, 'id'),
  )
  if (customers.length === 0) return { customers, sites: [], softeners: [] }
  const sites = await followMerged(
    await readPresentSites(tx, companyId, keysOf(reading, 'site')),
    (gone) => mergedInto(tx, companyId, gone),
    (ids) => readPresentSites(tx, companyId, ids, 'id'),
  )
  const softeners = await readPresentSofteners(tx, companyId, keysOf(reading, 'softener'))
  return { customers, sites, softeners }
}

const readLedgerOf = (tx: Tx, companyId: string, customers: readonly { id: string }[]) =>
  customers.length === 0
    ? []
    : readImportLedger(
        tx,
        companyId,
        customers.map((one) => one.id),
      )

/**
 * Works out everything a file would do, and writes nothing: the check before an import and the import itself are this one function. Stored things are
 * looked up by their match keys in bulk.
 */
export async function planImport(tx: Tx, input: ImportPlanInput): Promise<ImportPlan> {
  const { companyId, rows, reading } = input
  const known = await readKnown(tx, companyId, reading)
  const same = await findSame(tx, companyId, [...reading.wants.things.values()], known, input.display)
  const customers = [...known.customers, ...same.customers]
  const undone = customers.length === 0 ? new Set<string>() : await readUndoneBatches(tx, companyId)
  const entries = await readLedgerOf(tx, companyId, customers)
  const plan = emptyPlan()
  const ledger = foldLedger(entries as LedgerEntry[])
  const sites = [...known.sites, ...same.sites]
  const water = { companyId, wants: reading.wants, choices: input.supplies, sites, ledger }
  for (const [siteKey, waterSupplyId] of await settleSupplies(tx, water, plan.supplies)) {
    const site = reading.wants.things.get(siteKey)
    if (!site) continue
    site.facts.supply = { waterSupplyId }
    site.lines.supply = reading.wants.supplyOfSite.get(siteKey)?.line ?? site.line
  }
  const softeners = [...known.softeners, ...same.softeners]
  const outcomes = settleThings(plan, reading.wants, { customers, sites, softeners, undone, ledger }, input.fileName)
  leaveUnusedSupplies(plan.supplies, suppliesOnSites(plan))
  for (const row of rows) plan.rows.push(rowOutcome(row, reading, outcomes, same))
  return plan
}

const suppliesOnSites = ({ creates, patches }: ImportPlan): Set<unknown> =>
  new Set([...creates.site.map((one) => one.facts.supply?.waterSupplyId), ...patches.site.map((one) => one.columns.waterSupplyId)])

function rowOutcome(
  row: Pick<StoredRow, 'id' | 'line'>,
  reading: FileReading,
  outcomes: Outcomes,
  same: Pick<SameFound, 'notes' | 'mayBe'>,
): ImportPlan['rows'][number] {
  const mayBe = same.mayBe.get(row.line)
  const alike: CellProblem[] = mayBe ? [{ kind: 'decide', column: '', field: 'customerName', value: mayBe.name, reason: mayBe.reason }] : []
  const problems = [...(reading.problems.get(row.line) ?? []), ...alike]
  const base = { id: row.id, line: row.line, problems, customerId: null, siteId: null, softenerId: null, notes: [], ledger: [] }
  if (reading.leftOut.has(row.line)) return { ...base, status: 'problem' }
  const keys = reading.wants.rowKeys.get(row.line)
  const { created, updated, notes, ledger, idOf } = outcomes
  const idFor = (key: string | undefined) => (key ? (idOf.get(key) ?? null) : null)
  return {
    ...base,
    status: created.has(row.line) ? 'created' : updated.has(row.line) ? 'updated' : 'unchanged',
    notes: [
      ...(same.notes.get(row.line) ?? []),
      ...(notes.get(row.line) ?? []),
      ...(reading.wants.notes.get(row.line) ?? []),
      ...(reading.assumptions.get(row.line) ?? []),
    ],
    customerId: idFor(keys?.customer),
    siteId: idFor(keys?.site),
    softenerId: idFor(keys?.softener),
    ledger: ledger.get(row.line) ?? [],
  }
}
