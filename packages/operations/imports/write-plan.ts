import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { insertImported, type NewRow } from '@almanac/database/sql/import-inserts'
import { saveRowOutcomes } from '@almanac/database/sql/import-row-outcomes'
import { type ImportedTable, updateImported } from '@almanac/database/sql/import-updates'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { ImportKind } from '@almanac/records/import-facts'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { type ImportPlan, KINDS } from './plan-types.ts'
import { rowsOf } from './rows-of-creates.ts'
import { CONSENTS, writeConsents } from './write-consents.ts'

const CHUNK = 1000
const TABLE_OF: Record<ImportKind, ImportedTable> = {
  customer: 'customer',
  contact: 'contact',
  site: 'site',
  softener: 'softener',
  tank: 'tank',
  bed: 'bed',
  test: 'water_test',
}

export type WriteContext = {
  companyId: string
  batchId: string
  fileName: string
  today: string
  onProgress: (share: number) => Promise<void>
}

/** Inserts in chunks: short statements with few parameters, and progress in between. */
async function inChunks<T>(
  rows: readonly T[],
  insert: (chunk: T[]) => Promise<unknown>,
  done: (count: number) => Promise<void>,
): Promise<void> {
  for (let start = 0; start < rows.length; start += CHUNK) {
    const chunk = rows.slice(start, start + CHUNK)
    await insert(chunk)
    await done(chunk.length)
  }
}

async function writeSupplies(tx: Tx, plan: ImportPlan, { companyId, batchId, fileName }: WriteContext): Promise<void> {
  const { create, revive, periods } = plan.supplies
  if (create.length > 0)
    await tx.waterSupply.createMany({ data: create.map(({ id, name, kind }) => ({ companyId, id, name, kind, batchId })) })
  if (revive.length > 0)
    await tx.waterSupply.updateMany({
      where: { companyId, id: { in: revive } },
      data: { archivedAt: null, batchId, version: { increment: 1 } },
    })
  if (periods.length > 0)
    await tx.supplyPeriod.createMany({
      data: periods.map(({ supplyId, disinfectant, line }) => ({
        ...{ companyId, id: newId(), waterSupplyId: supplyId, fromDay: dateOf(null), disinfectant, entered: {} },
        source: `import ${fileName} line ${line}`,
      })),
    })
}

async function writePatches(tx: Tx, plan: ImportPlan, { companyId, today }: WriteContext): Promise<void> {
  for (const kind of KINDS) {
    const patches = plan.patches[kind]
    if (patches.length === 0) continue
    const changed = await updateImported(tx, companyId, TABLE_OF[kind], patches)
    if (changed !== patches.length)
      throw new AppError('conflict', 'Someone changed one of these records just now. Nothing was imported; we’re trying again.', {
        busy: true,
      })
  }
  const consents = plan.patches.contact.flatMap(({ id, columns }) =>
    Object.entries(CONSENTS).flatMap(([column, channel]) => {
      const granted = columns[column]
      return typeof granted === 'boolean' ? [{ contactId: id, channel, granted }] : []
    }),
  )
  await writeConsents(tx, companyId, [...plan.consents, ...consents], today)
}

/** Writes a plan with set-based statements: changes before insertions, since a tank holds one open bed, and what hangs on a thing after it. */
export async function writePlan(tx: Tx, plan: ImportPlan, context: WriteContext): Promise<void> {
  const { companyId, onProgress } = context
  const rows = rowsOf(plan, context)
  const total = plan.rows.length + Object.values(rows).reduce((sum, list) => sum + list.length, 0)
  let done = 0
  const step = async (count: number) => {
    done += count
    await onProgress(done / Math.max(1, total))
  }
  await writeSupplies(tx, plan, context)
  await lockRows(
    tx,
    companyId,
    'bed',
    plan.patches.bed.map((patch) => patch.id),
  )
  await writePatches(tx, plan, context)
  const order = ['customer', 'site', 'tenure', 'contact', 'consent', 'softener', 'tank', 'bed', 'water_test'] as const
  for (const table of order) {
    const list = table === 'water_test' ? rows.waterTest : rows[table]
    await inChunks<NewRow>(list, (chunk) => insertImported(tx, table, chunk), step)
  }
  const outcomes = plan.rows.map(({ ledger, ...row }) => ({ ...row, before: ledger.length > 0 ? ledger : null }))
  await inChunks(outcomes, (chunk) => saveRowOutcomes(tx, companyId, chunk), step)
}
