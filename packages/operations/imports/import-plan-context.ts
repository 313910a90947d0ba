import type { PresentCustomer, PresentSite, PresentSoftener, PresentThing } from '@almanac/database/read/import-present'
import type { DesiredEntity } from './entities-from-record.ts'
import { columnsOf, factsOf, type ImportedFacts } from './facts.ts'
import type { Ledger, LedgerEntry } from './ledger.ts'
import type { ImportPlan } from './plan-types.ts'

export type ExistingRecords = {
  customers: readonly PresentCustomer[]
  sites: readonly PresentSite[]
  softeners: readonly PresentSoftener[]
  undone: ReadonlySet<string>
  ledger: Ledger
}

/** What becomes of each line, and the id of each key. */
export type Outcomes = {
  created: Set<number>
  updated: Set<number>
  notes: Map<number, string[]>
  ledger: Map<number, LedgerEntry[]>
  idOf: Map<string, string>
}

/** Shared state while an import plan is built, handed to those who settle single things. */
export type ImportPlanContext = {
  plan: ImportPlan
  outcomes: Outcomes
  ledger: Ledger
  fileName: string
  tankCount: Map<string, number>
  note: (line: number, sentence: string) => void
  make: (thing: DesiredEntity, facts?: ImportedFacts, key?: string) => string
  change: (thing: DesiredEntity, present: PresentThing, sources?: Record<string, string>) => void
  enter: (line: number, entry: LedgerEntry) => void
}

/** The day a list was right says nothing of what is known by a later day. */
export function withoutOlderDay(thing: DesiredEntity, { row }: PresentThing, fact: 'lastSeenDay' | 'day'): DesiredEntity {
  const known = columnsOf(factsOf(thing.kind, row))[fact]
  if (!thing.byList || typeof known !== 'string' || known < thing.byList) return thing
  const { [fact]: _, ...facts } = thing.facts
  return { ...thing, facts }
}
