import type { Tx } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import { lockImports } from '@almanac/database/sql/import-row-outcomes'
import { AppError } from '@almanac/runtime/errors'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { companyFacts } from '../shared/company-facts.ts'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'
import { announceRecords } from './announce-records.ts'
import { mappingOf } from './batch-mapping.ts'
import { countPlan } from './count-plan.ts'
import { forecastBeds } from './forecast-beds.ts'
import { choicesOf } from './name-supplies.ts'
import { planImport } from './plan-import.ts'
import type { ImportPlan } from './plan-types.ts'
import { progressOf } from './progress.ts'
import { readBatch, readBatchRows } from './read-batch.ts'
import { readRowsApart } from './read-rows-apart.ts'
import { writePlan } from './write-plan.ts'

/** Twenty thousand rows take well under a minute; a slow disk may need several. */
const PATIENCE = { timeoutMs: 600_000 }
/** The list was read within a minute at its check; no page waits for it here, and the machine may be busier. */
const READ_SECONDS = 300
const TOKEN_CHUNK = 500
const [READ, WRITTEN] = [0.25, 0.7]

/** Sites of changed customers that the file does not name: their words change as well. */
async function sitesOf(tx: Tx, companyId: string, plan: ImportPlan): Promise<string[]> {
  const customerIds = plan.patches.customer.map((one) => one.id)
  const contactIds = plan.patches.contact.map((one) => one.id)
  if (customerIds.length + contactIds.length === 0) return []
  const contacts = await tx.contact.findMany({ where: { companyId, id: { in: contactIds } }, select: { customerId: true } })
  const all = [...customerIds, ...contacts.map((one) => one.customerId)]
  const tenures = await tx.tenure.findMany({ where: { companyId, customerId: { in: all }, toDay: null }, select: { siteId: true } })
  return tenures.map((one) => one.siteId)
}

/**
 * Writes an import batch: one transaction for everything, so that a process killed midway leaves nothing of it and the queue's next try starts
 * over. A batch that is applied already is left alone. `midway` is called before the commit, for tests that break it there.
 */
export async function applyImport({ companyId, batchId }: TaskPayloads['apply-import'], midway?: () => Promise<void>): Promise<void> {
  const scope = { companyId, personId: null }
  const progress = progressOf(companyId, batchId)
  if (!(await progress.begin())) return
  try {
    await inCompany(
      scope,
      async (tx) => {
        await lockImports(tx, companyId)
        const batch = await readBatch(tx, companyId, batchId)
        if (batch.state === 'applied' || batch.state === 'undone') return
        const company = await companyFacts(tx, companyId)
        const rows = await readBatchRows(tx, companyId, batchId)
        const share = (part: number) => progress.show(Math.floor(rows.length * part))
        const mapping = mappingOf(batch.header, batch.mapping.columns)
        // A share that could not be shown stops nothing: where the database is away, this transaction notices by itself.
        const onRead = (read: number) => void share((read / rows.length) * READ).catch(() => {})
        const input = {
          rows: rows.map(({ line, cells }) => ({ line, cells })),
          mapping,
          options: { today: company.today, display: company, listRightOn: batch.mapping.listRightOn },
        }
        const reading = await readRowsApart(companyId, input, { onRead, seconds: READ_SECONDS })
        const supplies = choicesOf(batch.mapping.supplies)
        const plan = await planImport(tx, { companyId, fileName: batch.fileName, rows, reading, display: company, supplies })
        const onProgress = (written: number) => share(READ + written * (WRITTEN - READ))
        await writePlan(tx, plan, { companyId, batchId, fileName: batch.fileName, today: company.today, onProgress })
        const siteIds = [...new Set([...plan.siteIds, ...(await sitesOf(tx, companyId, plan))])]
        for (let start = 0; start < siteIds.length; start += TOKEN_CHUNK) {
          await rewriteSiteTokens(tx, companyId, siteIds.slice(start, start + TOKEN_CHUNK))
          await share(WRITTEN + ((1 - WRITTEN) * start) / siteIds.length)
        }
        await midway?.()
        await progress.stop()
        const command = commandTools(tx, { companyId, personId: batch.createdBy }, 'imports.apply', null)
        const counts = countPlan(plan)
        await tx.importBatch.update({
          where: { companyId_id: { companyId, id: batchId } },
          data: {
            ...{ state: 'applied', doneRows: rows.length, appliedAt: command.at, failure: null, version: { increment: 1 } },
            counts: { check: (batch.counts as { check?: object }).check ?? counts, done: counts },
          },
        })
        await command.audit('applied', 'import-batch', batchId, { ...counts })
        await announceRecords(command, batchId)
        if (plan.creates.bed.length > 0) await command.enqueue('forecast-company', { batchId, cause: 'import' })
        await forecastBeds(command, [...plan.bedIds], 'import')
      },
      PATIENCE,
    )
  } finally {
    await progress.stop()
  }
}

/** Marks an import that an error of its own ended, with a sentence for whoever looks at it. Until then it is still running, whatever broke its tries off. */
export async function giveUpImport({ companyId, batchId }: TaskPayloads['apply-import'], error: unknown): Promise<void> {
  const sentence =
    'Something went wrong on our side, several times in a row. Nothing of it was written. Hand it over again, or bring in a part of the list.'
  await progressOf(companyId, batchId).fail(error instanceof AppError ? error.message : sentence)
}
