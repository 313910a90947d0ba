import type { CheckImportInput, ImportCounts } from '@almanac/contract/imports'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { answeredBefore, type Command, runCommand } from '@almanac/database/run-command'
import { saveRowOutcomes } from '@almanac/database/sql/import-row-outcomes'
import { AppError } from '@almanac/runtime/errors'
import { mappingProblems } from '@almanac/service-rules/import/gather-cells'
import { companyFacts } from '../shared/company-facts.ts'
import { mappingOf, type StoredMapping } from './batch-mapping.ts'
import { countPlan } from './count-plan.ts'
import { choicesOf, nameSupplies } from './name-supplies.ts'
import { planImport } from './plan-import.ts'
import { readBatch, readBatchRows } from './read-batch.ts'
import { readRowsApart } from './read-rows-apart.ts'

const OPERATION = 'imports.check'
const CHUNK = 2000
const OPEN = new Set(['draft', 'failed'])

/** What the rows say by the choices made. Read before the command: its turn may be long in coming, and no transaction waits for it. Rows never change. */
async function readByChoices({ companyId }: Scope, { batchId, columns, listRightOn }: CheckImportInput) {
  const { mapping, rows, company } = await inCompany({ companyId }, async (tx) => {
    const batch = await readBatch(tx, companyId, batchId)
    const mapping = mappingOf(batch.header, columns)
    const problems = mappingProblems(mapping)
    if (problems.length > 0) throw new AppError('invalid', `${problems.join(' ')} Nothing was checked yet.`, { problems })
    const rows = await readBatchRows(tx, companyId, batchId)
    return { mapping, rows, company: await companyFacts(tx, companyId) }
  })
  if (listRightOn !== null && listRightOn > company.today)
    throw new AppError(
      'invalid',
      'The day on which the list was last right lies in the future. Nothing was checked; choose today or an earlier day.',
    )
  const options = { today: company.today, display: company, listRightOn }
  const reading = await readRowsApart(companyId, { rows: rows.map(({ line, cells }) => ({ line, cells })), mapping, options })
  return { rows: rows.map(({ id, line }) => ({ id, line })), reading, company }
}

/**
 * Keeps the choices for the columns and works out what the import would do to every row, without touching a customer or a site. Problem rows are kept
 * with their reasons.
 */
export async function checkImport(
  scope: Scope & { personId: string },
  input: CheckImportInput,
): Promise<ImportCounts & { version: number }> {
  const { companyId } = scope
  const before = await answeredBefore<ImportCounts & { version: number }>(scope, OPERATION, input)
  if (before) return before
  const { rows, reading, company } = await readByChoices(scope, input)
  const work = async (tx: Tx, command: Command) => {
    const batch = await readBatch(tx, companyId, input.batchId)
    if (!OPEN.has(batch.state))
      throw new AppError('conflict', 'This import is already under way or done, so its columns can’t change. Nothing was changed.')
    const supplies = await nameSupplies(tx, companyId, reading.wants, { now: input.supplies, before: batch.mapping.supplies })
    const plan = await planImport(tx, {
      companyId,
      fileName: batch.fileName,
      rows,
      reading,
      display: company,
      supplies: choicesOf(supplies),
    })
    // What would happen is kept as notes, problems and changes only: nothing has been made yet, so no row points anywhere.
    const outcomes = plan.rows.map(({ ledger, ...row }) => {
      const changes = ledger.filter((entry) => Object.keys(entry.was ?? {}).length > 0)
      return { ...row, customerId: null, siteId: null, softenerId: null, before: changes.length > 0 ? changes : null }
    })
    for (let start = 0; start < outcomes.length; start += CHUNK) await saveRowOutcomes(tx, companyId, outcomes.slice(start, start + CHUNK))
    const counts = countPlan(plan)
    const chosen = new Map(input.columns.map((choice) => [choice.column, choice]))
    const stored: StoredMapping = {
      ...batch.mapping,
      checked: true,
      listRightOn: input.listRightOn,
      ...{ supplies, hardnessBySupply: reading.hardnessBySupply },
      columns: batch.mapping.columns.map(({ column, header, confidence, reason, ask, examples }) => ({
        ...{ header, confidence, reason, ask, examples },
        ...(chosen.get(column) ?? { column, field: null }),
      })),
    }
    const { count } = await tx.importBatch.updateMany({
      where: { companyId, id: batch.id, version: input.version },
      data: { mapping: stored as object, counts: { check: counts }, state: 'draft', failure: null, version: { increment: 1 } },
    })
    await expectChanged(count, 'import', input.version, {}, async () => ({ version: batch.version }))
    await command.audit('checked', 'import-batch', batch.id, { ...counts })
    await command.announce('import-batch', batch.id, input.version + 1)
    return { ...counts, version: input.version + 1 }
  }
  return runCommand(scope, OPERATION, input, work, { timeoutMs: 180_000 })
}
