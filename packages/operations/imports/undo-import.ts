import type { BatchCommandInput, ImportUndone } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockImports } from '@almanac/database/sql/import-row-outcomes'
import { type ImportedTable, updateImported } from '@almanac/database/sql/import-updates'
import { markImportsLeftEmpty } from '@almanac/database/sql/imports-left-empty'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { ImportKind } from '@almanac/records/import-facts'
import { AppError } from '@almanac/runtime/errors'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { announceRecords } from './announce-records.ts'
import { forecastBeds } from './forecast-beds.ts'
import type { LedgerEntry } from './ledger.ts'
import { KINDS } from './plan-types.ts'
import { readBatch } from './read-batch.ts'
import { planUndo, type UndoPlan } from './undo-plan.ts'
import { writeConsents } from './write-consents.ts'

const CHUNK = 5000
const TABLE_OF: Record<ImportKind, ImportedTable> = {
  ...{ customer: 'customer', contact: 'contact', site: 'site', softener: 'softener' },
  ...{ tank: 'tank', bed: 'bed', test: 'water_test' },
}

async function archive(tx: Tx, companyId: string, kind: ImportKind, ids: readonly string[], at: Date): Promise<void> {
  for (let start = 0; start < ids.length; start += CHUNK) {
    const where = { companyId, id: { in: ids.slice(start, start + CHUNK) } }
    const data = { archivedAt: at, version: { increment: 1 } }
    if (kind === 'customer') await tx.customer.updateMany({ where, data })
    else if (kind === 'contact') await tx.contact.updateMany({ where, data })
    else if (kind === 'site') await tx.site.updateMany({ where, data })
    else if (kind === 'softener') await tx.softener.updateMany({ where, data })
    else if (kind === 'tank') await tx.tank.updateMany({ where, data })
    else if (kind === 'bed') await tx.bed.updateMany({ where, data })
    else await tx.waterTest.updateMany({ where, data: { withdrawnAt: at, version: { increment: 1 } } })
  }
}

async function takeBack(tx: Tx, companyId: string, plan: UndoPlan, at: Date, today: string): Promise<void> {
  for (const kind of [...KINDS].reverse()) await archive(tx, companyId, kind, plan.archive[kind], at)
  for (const kind of KINDS) {
    const changed = await updateImported(tx, companyId, TABLE_OF[kind], plan.patches[kind])
    if (changed !== plan.patches[kind].length)
      throw new AppError('conflict', 'Someone changed one of these records just now. Nothing was undone; try again.', { busy: true })
  }
  await writeConsents(tx, companyId, plan.consents, today)
}

/** Supplies the batch added go when no site stands on them any more. */
async function archiveSupplies(tx: Tx, companyId: string, batchId: string, at: Date): Promise<void> {
  await tx.waterSupply.updateMany({
    where: { companyId, batchId, version: 1, archivedAt: null, sites: { none: { archivedAt: null } } },
    data: { archivedAt: at, version: { increment: 1 } },
  })
}

/** What undoing an applied batch would archive and give back as things are, and what would stay, with the reasons. */
async function plannedUndo(tx: Tx, companyId: string, batchId: string) {
  const batch = await readBatch(tx, companyId, batchId)
  if (batch.state !== 'applied') throw new AppError('conflict', 'Only an applied import can be undone. Nothing was changed.')
  const { appliedAt } = batch
  const later =
    appliedAt &&
    (await tx.importBatch.findFirst({
      where: { companyId, state: 'applied', appliedAt: { gt: appliedAt } },
      select: { fileName: true, appliedAt: true },
      orderBy: { appliedAt: 'desc' },
    }))
  const company = await companyFacts(tx, companyId)
  const rows = await tx.importRow.findMany({
    where: { companyId, batchId: batch.id, status: { not: 'problem' } },
    select: { customerId: true, siteId: true, softenerId: true, before: true },
    orderBy: { line: 'asc' },
  })
  const ledger = rows.map(({ before, ...unit }) => ({
    ...unit,
    entries: (Array.isArray(before) ? before : []) as unknown as LedgerEntry[],
  }))
  const plan = await planUndo(tx, companyId, batch.id, ledger)
  if (later?.appliedAt && plan.summary.kept > 0)
    plan.summary.keptExamples.unshift({
      ...{ kind: 'import', siteId: null },
      why: `A later import (${later.fileName}, ${formatDay(dayIn(company.timeZone, later.appliedAt), company)}) changed some of it; undo that one first to undo more.`,
    })
  return { batch, plan, company }
}

/** What undoing an import would do, said before anybody presses it; nothing is changed. */
export const previewUndoImport = ({ companyId }: Pick<Scope, 'companyId'>, batchId: string): Promise<ImportUndone> =>
  inCompany({ companyId }, async (tx) => (await plannedUndo(tx, companyId, batchId)).plan.summary)

/**
 * Undoes an applied batch in one transaction: archives what it made, as far as nobody touched it since, and gives changed values back where they still stand
 * as it wrote them. Another import of the same things says how many of its rows are gone with them. Answers what stays, and why.
 */
export async function undoImport(
  scope: Scope & { personId: string },
  input: BatchCommandInput,
): Promise<ImportUndone & { version: number }> {
  const { companyId } = scope
  const work = async (tx: Tx, command: Command) => {
    await lockImports(tx, companyId)
    const { batch, plan, company } = await plannedUndo(tx, companyId, input.batchId)
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { state: 'undone', version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    // In id order, as whoever writes forecasts locks them: neither waits for the other in a circle.
    await lockRows(tx, companyId, 'bed', [...plan.bedIds])
    await takeBack(tx, companyId, plan, command.at, company.today)
    await archiveSupplies(tx, companyId, batch.id, command.at)
    await rewriteSiteTokens(tx, companyId, [...plan.siteIds])
    await tx.importBatch.update({
      where: { companyId_id: { companyId, id: batch.id } },
      data: { counts: { ...(batch.counts as object), undone: plan.summary } as object },
    })
    const undone = { batchId: batch.id, fileName: batch.fileName, softenerIds: plan.archive.softener }
    for (const id of await markImportsLeftEmpty(tx, companyId, undone)) await command.announce('import-batch', id)
    const { archived, restored, kept } = plan.summary
    await command.audit('undone', 'import-batch', batch.id, { archived, restored, kept })
    await announceRecords(command, batch.id)
    await forecastBeds(command, [...plan.bedIds], 'edit')
    return { ...plan.summary, version: input.version + 1 }
  }
  return runCommand(scope, 'imports.undo', input, work, { timeoutMs: 300_000 })
}
