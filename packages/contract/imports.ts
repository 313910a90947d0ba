import { importRowStatuses, importStates, rowProblemKinds } from '@almanac/records/import-state'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Day, Id, Instant, page, pageOf, Version } from './shared.ts'

/** Everything a column can fill; the reading rules hold the same list with titles. */
const ImportFieldName = z.enum([
  ...([
    'referenceNumber',
    'customerName',
    'contactName',
    'phone',
    'otherPhone',
    'email',
    'street',
    'town',
    'postcode',
    'region',
    'latitude',
    'longitude',
    'accessNotes',
  ] as const),
  ...(['softenerLabel', 'tankPosition', 'tank', 'tankCount', 'resinVolume', 'resinKind', 'installed', 'bedBegan', 'lastSeen'] as const),
  ...(['supplyName', 'disinfectant', 'hardness', 'iron', 'chlorine', 'notes', 'consent', 'mayEmail', 'mayPhone', 'mayWrite'] as const),
])

/** What one column fills, with the choices that numbers and dates in it need. */
export const ImportColumnChoice = z.object({
  column: z.number().int().min(0).max(500),
  field: ImportFieldName.nullable(),
  hardnessUnit: z.enum(['gpg', 'mg/L', 'dH', 'fH', 'mmol/L', 'each-by-size']).optional(),
  concentrationUnit: z.enum(['mg/L', 'ug/L', 'g/L']).optional(),
  volumeUnit: z.enum(['ft3', 'L']).optional(),
  dayOrder: z.enum(['day-first', 'month-first', 'undecided']).optional(),
})
export type ImportColumnChoice = z.infer<typeof ImportColumnChoice>

/** A column with what was suggested for it and why. */
export const ImportColumn = ImportColumnChoice.extend({
  header: z.string(),
  confidence: z.enum(['sure', 'likely', 'guess', 'none']),
  reason: z.string(),
  ask: z.string().nullable(),
  examples: z.array(z.string()),
})
export type ImportColumn = z.infer<typeof ImportColumn>

/** What a list means by the name of a supply: one on record, the one of that name, or the well of each home that has it. */
const ImportSupplyChoice = z.discriminatedUnion('to', [
  z.object({ to: z.literal('supply'), waterSupplyId: Id }),
  z.object({ to: z.literal('named') }),
  z.object({ to: z.literal('own-wells') }),
])
export type ImportSupplyChoice = z.infer<typeof ImportSupplyChoice>

/** A supply as the list names it, with what is meant by it and who said so: this import, an earlier one, or nobody yet. */
export const ImportSupply = z.object({
  name: z.string(),
  rows: z.number().int(),
  choice: ImportSupplyChoice,
  from: z.enum(['chosen', 'earlier', 'usual']),
  /** Whether a supply of that name is on record. */
  isOnRecord: z.boolean(),
})
export type ImportSupply = z.infer<typeof ImportSupply>

/** How many rows and things; of the check before, of the import, and of undoing it. */
export const ImportCounts = z.object({
  created: z.number().int(),
  updated: z.number().int(),
  unchanged: z.number().int(),
  problem: z.number().int(),
  noted: z.number().int(),
  /** Rows that go in with a cell left empty, and rows that say something to decide about; batches of an older release counted neither. */
  leftEmpty: z.number().int().default(0),
  decide: z.number().int().default(0),
  /** New beds of which nothing says when they last worked. */
  unseen: z.number().int().default(0),
  customers: z.number().int(),
  sites: z.number().int(),
  softeners: z.number().int(),
})
export type ImportCounts = z.infer<typeof ImportCounts>

/** What an undo left standing, and why. */
export const ImportKept = z.object({ kind: z.string(), siteId: Id.nullable(), why: z.string() })
export type ImportKept = z.infer<typeof ImportKept>
export const ImportUndone = z.object({
  archived: z.number().int(),
  restored: z.number().int(),
  kept: z.number().int(),
  keptExamples: z.array(ImportKept),
})
export type ImportUndone = z.infer<typeof ImportUndone>

export const ImportBatchRow = z.object({
  id: Id,
  version: Version,
  fileName: z.string(),
  state: z.enum(importStates),
  totalRows: z.number().int(),
  doneRows: z.number().int(),
  counts: ImportCounts.nullable(),
  /** Rows whose records are gone since another import was undone, and that import's file. */
  gone: z.object({ rows: z.number().int(), fileName: z.string() }).nullable(),
  createdAt: Instant,
  appliedAt: Instant.nullable(),
})
export type ImportBatchRow = z.infer<typeof ImportBatchRow>

export const ImportBatchPage = ImportBatchRow.extend({
  headerLine: z.number().int(),
  /** How the file was read: its letters, its delimiter, its sheet. */
  sentences: z.array(z.string()),
  columns: z.array(ImportColumn),
  /** Of a workbook: the sheets that hold anything, and the one that was read. */
  sheets: z.array(z.string()),
  sheet: z.string().nullable(),
  /** Whether the file is still kept, to be read another way. */
  isKept: z.boolean(),
  /** True once the columns were confirmed and all rows checked. */
  checked: z.boolean(),
  listRightOn: Day.nullable(),
  /** The supplies that the list names, those of the most rows first; known once its rows were checked. */
  supplies: z.array(ImportSupply),
  failure: z.string().nullable(),
  undone: ImportUndone.nullable(),
})
export type ImportBatchPage = z.infer<typeof ImportBatchPage>

const ImportProblem = z.object({
  kind: z.enum(rowProblemKinds),
  column: z.string(),
  value: z.string(),
  reason: z.string(),
})

/** One row as it will be understood, or as it went. */
export const ImportRowView = z.object({
  id: Id,
  line: z.number().int(),
  status: z.enum(importRowStatuses),
  siteId: Id.nullable(),
  problems: z.array(ImportProblem),
  notes: z.array(z.string()),
  /** What it changes of records that were there; blank where nothing was, or is. */
  changes: z.array(z.object({ what: z.string(), from: z.string(), to: z.string() })),
  understood: z
    .object({
      customer: z.string(),
      site: z.string(),
      tank: z.string(),
      began: z.string(),
      lastSeen: z.string(),
      water: z.string(),
      contact: z.string(),
    })
    .nullable(),
})
export type ImportRowView = z.infer<typeof ImportRowView>

export const CheckImportInput = command({
  batchId: Id,
  version: Version,
  columns: z.array(ImportColumnChoice).min(1).max(500),
  /** The day on which the list was last right and its softeners worked; null: nobody knows. */
  listRightOn: Day.nullable().default(null),
  /** What is meant by names of supplies; of others what was chosen before holds. */
  supplies: z
    .array(z.object({ name: z.string().min(1).max(200), choice: ImportSupplyChoice }))
    .max(500)
    .default([]),
})
export type CheckImportInput = z.infer<typeof CheckImportInput>
export const BatchCommandInput = command({ batchId: Id, version: Version })
export type BatchCommandInput = z.infer<typeof BatchCommandInput>
export const ReadAgainInput = command({
  batchId: Id,
  version: Version,
  /** Of a workbook; null for a text file. */
  sheet: z.string().min(1).max(100).nullable(),
  /** The line with the headings, counted from 1; null: none names the columns. */
  headingLine: z.number().int().min(1).max(200_000).nullable(),
})
export type ReadAgainInput = z.infer<typeof ReadAgainInput>

export const imports = {
  list: oc.route({ method: 'GET', path: '/imports' }).input(page({})).output(pageOf(ImportBatchRow)),
  batch: oc
    .route({ method: 'GET', path: '/imports/batch' })
    .input(z.object({ batchId: Id }))
    .output(ImportBatchPage),
  rows: oc
    .route({ method: 'GET', path: '/imports/rows' })
    .input(page({ batchId: Id, only: z.enum(['all', 'problem', 'noted', 'changed']) }))
    .output(pageOf(ImportRowView)),
  check: oc
    .route({ method: 'POST', path: '/imports/check' })
    .input(CheckImportInput)
    .output(ImportCounts.extend({ version: Version })),
  apply: oc
    .route({ method: 'POST', path: '/imports/apply' })
    .input(BatchCommandInput)
    .output(z.object({ batchId: Id, version: Version })),
  readAgain: oc
    .route({ method: 'POST', path: '/imports/readAgain' })
    .input(ReadAgainInput)
    .output(z.object({ batchId: Id })),
  discard: oc
    .route({ method: 'POST', path: '/imports/discard' })
    .input(BatchCommandInput)
    .output(z.object({ batchId: Id, version: Version })),
  /** What undoing it would do, before it is done. */
  beforeUndo: oc
    .route({ method: 'GET', path: '/imports/before-undo' })
    .input(z.object({ batchId: Id }))
    .output(ImportUndone),
  undo: oc
    .route({ method: 'POST', path: '/imports/undo' })
    .input(BatchCommandInput)
    .output(ImportUndone.extend({ version: Version })),
}
