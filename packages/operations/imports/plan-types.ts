import type { ImportKind } from '@almanac/records/import-facts'
import type { RowProblemKind } from '@almanac/records/import-state'
import type { EnteredValues, ImportedFacts, Value } from './facts.ts'
import type { LedgerEntry } from './ledger.ts'

/** A thing to be made. `parents` are ids. */
export type Create = {
  kind: ImportKind
  id: string
  key: string
  line: number
  parents: { customer: string; site: string; softener: string; tank: string }
  position: number
  tankCount: number
  facts: ImportedFacts
  sources: Record<string, string>
  entered: EnteredValues
}

/** A stored row to be changed: all its importable columns as they shall be. The version must still be the one read. */
export type Patch = {
  id: string
  version: number
  columns: Record<string, Value>
  sources: Record<string, string | null>
  entered: EnteredValues
}

export type ConsentPatch = { contactId: string; channel: string; granted: boolean }

export type SupplyPlan = {
  create: { id: string; name: string; kind: 'town' | 'private-well'; line: number }[]
  /** Archived supplies of that name, taken up again. */
  revive: string[]
  periods: { supplyId: string; disinfectant: string; line: number }[]
}

export type CellProblem = { kind: RowProblemKind; column: string; field: string | null; value: string; reason: string }

export type RowOutcome = {
  id: string
  line: number
  status: 'created' | 'updated' | 'unchanged' | 'problem'
  problems: CellProblem[]
  notes: string[]
  customerId: string | null
  siteId: string | null
  softenerId: string | null
  ledger: LedgerEntry[]
}

export type ImportPlan = {
  creates: Record<ImportKind, Create[]>
  patches: Record<ImportKind, Patch[]>
  consents: ConsentPatch[]
  supplies: SupplyPlan
  rows: RowOutcome[]
  /** Sites whose search words may differ. */
  siteIds: Set<string>
  /** Stored beds whose forecast may move. */
  bedIds: Set<string>
}

export const KINDS = ['customer', 'contact', 'site', 'softener', 'tank', 'bed', 'test'] as const satisfies readonly ImportKind[]

export function emptyPlan(): ImportPlan {
  const byKind = <T>() => Object.fromEntries(KINDS.map((kind) => [kind, [] as T[]])) as unknown as Record<ImportKind, T[]>
  return {
    creates: byKind<Create>(),
    patches: byKind<Patch>(),
    consents: [],
    supplies: { create: [], revive: [], periods: [] },
    rows: [],
    siteIds: new Set(),
    bedIds: new Set(),
  }
}
