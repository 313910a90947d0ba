import type { Tx } from '@almanac/database/client'
import { readImportLedger, readUndoneBatches } from '@almanac/database/read/import-ledger'
import { readPresentCustomers, readPresentSites, readPresentSofteners } from '@almanac/database/read/import-present'
import { foldLedger, type LedgerEntry } from './ledger.ts'
import { emptyPlan, type Plan } from './plan-types.ts'
import type { FileReading, StoredRow } from './read-rows.ts'
import { settleSupplies } from './settle-supplies.ts'
import { settleThings } from './settle-things.ts'
import type { Outcomes } from './settling.ts'

export type PlanInput = {
  companyId: string
  fileName: string
  rows: readonly Pick<StoredRow, 'id' | 'line'>[]
  /** What was read in them. */
  reading: FileReading
}

const keysOf = (reading: FileReading, kind: string) =>
  [...reading.wants.things.values()].filter((one) => one.kind === kind).map((one) => one.key)

/**
 * Works out everything a file would do, and writes nothing: the check before an import and the import itself are this one function. Stored things are
 * looked up by their match keys in bulk.
 */
export async function planImport(tx: Tx, input: PlanInput): Promise<Plan> {
  const { companyId, rows, reading } = input
  const customers = await readPresentCustomers(tx, companyId, keysOf(reading, 'customer'))
  const isFresh = customers.length === 0
  const sites = isFresh ? [] : await readPresentSites(tx, companyId, keysOf(reading, 'site'))
  const softeners = isFresh ? [] : await readPresentSofteners(tx, companyId, keysOf(reading, 'softener'))
  const undone = isFresh ? new Set<string>() : await readUndoneBatches(tx, companyId)
  const entries = isFresh
    ? []
    : await readImportLedger(
        tx,
        companyId,
        customers.map((one) => one.id),
      )
  const plan = emptyPlan()
  const supplyIds = await settleSupplies(tx, companyId, reading.wants, plan.supplies)
  for (const [siteKey, { supply, line }] of reading.wants.supplyOfSite) {
    const site = reading.wants.things.get(siteKey)
    const waterSupplyId = supplyIds.get(supply)
    if (!site || !waterSupplyId) continue
    site.facts.supply = { waterSupplyId }
    site.lines.supply = line
  }
  const standing = { customers, sites, softeners, undone, ledger: foldLedger(entries as LedgerEntry[]) }
  const outcomes = settleThings(plan, reading.wants, standing, input.fileName)
  for (const row of rows) plan.rows.push(rowOutcome(row, reading, outcomes))
  return plan
}

function rowOutcome(row: Pick<StoredRow, 'id' | 'line'>, reading: FileReading, outcomes: Outcomes): Plan['rows'][number] {
  const problems = reading.problems.get(row.line) ?? []
  const base = { id: row.id, line: row.line, problems, customerId: null, siteId: null, softenerId: null, notes: [], ledger: [] }
  if (reading.leftOut.has(row.line)) return { ...base, status: 'problem' }
  const keys = reading.wants.rowKeys.get(row.line)
  const { created, updated, notes, ledger, idOf } = outcomes
  const idFor = (key: string | undefined) => (key ? (idOf.get(key) ?? null) : null)
  return {
    ...base,
    status: created.has(row.line) ? 'created' : updated.has(row.line) ? 'updated' : 'unchanged',
    notes: [...(notes.get(row.line) ?? []), ...(reading.wants.notes.get(row.line) ?? []), ...(reading.assumptions.get(row.line) ?? [])],
    customerId: idFor(keys?.customer),
    siteId: idFor(keys?.site),
    softenerId: idFor(keys?.softener),
    ledger: ledger.get(row.line) ?? [],
  }
}
