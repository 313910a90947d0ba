import { mergeables, movedKinds } from '@almanac/records/merging'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, page, pageOf, Version } from './shared.ts'
import { line } from './site-facts.ts'

/** One merging: what went into what. Null where it was erased since. */
const MergingRow = z.object({
  id: Id,
  version: Version,
  kind: z.enum(mergeables),
  gone: z.string().nullable(),
  kept: z.string().nullable(),
  at: Instant,
  undone: z.boolean(),
})
export type MergingRow = z.infer<typeof MergingRow>

const Merged = z.object({ mergingId: Id, moved: z.number().int() })
export type Merged = z.infer<typeof Merged>

/** What hangs on the one that goes moves to the one that is kept. */
export const MergeCustomers = command({ keptId: Id, goneId: Id })
export type MergeCustomers = z.infer<typeof MergeCustomers>
export const MergeSites = command({ keptId: Id, goneId: Id })
export type MergeSites = z.infer<typeof MergeSites>
/** The sites on the one that goes are on the other; its notes of the water go along where the other has none. */
export const MergeSupplies = command({ keptId: Id, goneId: Id })
export type MergeSupplies = z.infer<typeof MergeSupplies>
/** Every site in the one town is said to be in the other. */
export const MergeTowns = command({ from: line(120).min(1), to: line(120).min(1) })
export type MergeTowns = z.infer<typeof MergeTowns>
export const UndoMerging = command({ mergingId: Id, version: Version })
export type UndoMerging = z.infer<typeof UndoMerging>

/** Rows of one kind, the first few by name where they have one. */
const Moving = z.object({ kind: z.enum(movedKinds), count: z.number().int(), names: z.array(z.string()) })
export type Moving = z.infer<typeof Moving>
/** What undoing a merging would do. `refused`: why it can't be undone. `elsewhere`: what moved then and hangs on neither by now. */
const UndoPreview = z.object({ refused: z.string().nullable(), back: z.array(Moving), stays: z.array(Moving), elsewhere: z.array(Moving) })
export type UndoPreview = z.infer<typeof UndoPreview>

const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

/** Customers, sites, towns and water supplies that are on record twice are made one, and two again. */
export const merging = {
  list: oc.route({ method: 'GET', path: '/merging' }).input(page({})).output(pageOf(MergingRow)),
  /** Towns as sites name them, the most sites first. */
  townsOfSites: oc
    .route({ method: 'GET', path: '/merging/towns' })
    .output(z.array(z.object({ town: z.string(), sites: z.number().int() }))),
  customers: post('/merging/customers').input(MergeCustomers).output(Merged),
  sites: post('/merging/sites').input(MergeSites).output(Merged),
  supplies: post('/merging/supplies').input(MergeSupplies).output(Merged),
  towns: post('/merging/towns').input(MergeTowns).output(Merged),
  beforeUndo: oc
    .route({ method: 'GET', path: '/merging/before-undo' })
    .input(z.object({ mergingId: Id }))
    .output(UndoPreview),
  undo: post('/merging/undo')
    .input(UndoMerging)
    .output(z.object({ mergingId: Id, back: z.number().int() })),
}
