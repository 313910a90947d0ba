import type { ImportKind } from '@almanac/records/import-facts'
import type { ImportedFacts } from './facts.ts'

/** What an import did to one thing; kept with the row that named it first, for later imports and for undoing. */
export type LedgerEntry = {
  kind: ImportKind
  id: string
  key: string
  /** Facts as they stood before; null where the import created the thing. */
  was: ImportedFacts | null
  wrote: ImportedFacts
  /** Where the changed facts had come from before. */
  sources?: Record<string, string | null>
}

/** What stands written by imports: facts by thing, and the thing of each key. */
export type Ledger = { wrote: Map<string, ImportedFacts>; idOfKey: Map<string, string> }

/** Folds entries, oldest import first: a fact a later import was silent about counts as the earlier one wrote it. */
export function foldLedger(entries: Iterable<LedgerEntry>): Ledger {
  const ledger: Ledger = { wrote: new Map(), idOfKey: new Map() }
  for (const entry of entries) {
    ledger.wrote.set(entry.id, { ...ledger.wrote.get(entry.id), ...entry.wrote })
    ledger.idOfKey.set(entry.key, entry.id)
  }
  return ledger
}
