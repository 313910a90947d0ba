import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import type { CheckImportInput } from '@almanac/contract/imports'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { applyImport } from './apply-import.ts'
import { checkImport } from './check-import.ts'
import { queueImport } from './queue-import.ts'
import { readBatch } from './read-batch.ts'
import { readStoredFile } from './read-stored-file.ts'
import { storeUpload } from './store-upload.ts'

export type Firm = { companyId: string; personId: string }

/** A firm of its own, seven hours behind UTC, that nobody else writes to. */
export async function makeFirm(): Promise<Firm> {
  const { superUrl } = await testDatabase()
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  const companyId = newId()
  await db.query(
    `insert into company (id, name, time_zone, unit_system, currency) values ($1, 'Kettle Creek Water', 'America/Phoenix', 'us', 'USD')`,
    [companyId],
  )
  await db.end()
  return { companyId, personId: newId() }
}

export const bytesOf = (text: string) => new TextEncoder().encode(text)

export const batchOf = (firm: Firm, batchId: string) => inCompany(firm, (tx) => readBatch(tx, firm.companyId, batchId))
export const rowsOf = (firm: Firm, batchId: string) =>
  inCompany(firm, (tx) => tx.importRow.findMany({ where: { companyId: firm.companyId, batchId }, orderBy: { line: 'asc' } }))

/** Sends a file and has it read, as the worker does; answers the batch's id. */
export async function upload(firm: Firm, file: string | Uint8Array, fileName = 'list.csv'): Promise<string> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'almanac-test-'))
  const onDisk = path.join(folder, 'upload')
  await writeFile(onDisk, file)
  const { batchId } = await storeUpload(firm, { fileName, file: onDisk })
  await rm(folder, { recursive: true })
  await readStoredFile({ companyId: firm.companyId, batchId })
  return batchId
}

/** Uploads, confirms the columns as suggested, and queues; answers the batch's id. */
export async function prepare(
  firm: Firm,
  file: string | Uint8Array,
  fileName = 'list.csv',
  listRightOn: string | null = null,
  supplies: CheckImportInput['supplies'] = [],
): Promise<string> {
  const batchId = await upload(firm, file, fileName)
  const { mapping, version } = await batchOf(firm, batchId)
  const columns = mapping.columns.map(({ header: _h, confidence: _c, reason: _r, ask: _a, examples: _e, ...choice }) => choice)
  const checked = await checkImport(firm, { commandId: newId(), batchId, version, columns, listRightOn, supplies })
  await queueImport(firm, { commandId: newId(), batchId, version: checked.version })
  return batchId
}

/** The whole way of a file; answers its batch with the counts of what was done. */
export async function bringIn(
  firm: Firm,
  file: string | Uint8Array,
  fileName = 'list.csv',
  listRightOn: string | null = null,
  supplies: CheckImportInput['supplies'] = [],
) {
  const batchId = await prepare(firm, file, fileName, listRightOn, supplies)
  await applyImport({ companyId: firm.companyId, batchId })
  const batch = await batchOf(firm, batchId)
  return { batchId, batch, done: (batch.counts as { done: Record<string, number> }).done }
}

/** Everything of the firm an import may write, without the batches themselves: to compare before and after. */
export async function stateOf(firm: Firm) {
  return inCompany(firm, async (tx) => {
    const where = { companyId: firm.companyId }
    const orderBy = { id: 'asc' } as const
    const customers = await tx.customer.findMany({ where, orderBy })
    const contacts = await tx.contact.findMany({ where, orderBy, include: { consents: { orderBy } } })
    const sites = await tx.site.findMany({ where, orderBy })
    const tenures = await tx.tenure.findMany({ where, orderBy })
    const softeners = await tx.softener.findMany({ where, orderBy })
    const tanks = await tx.tank.findMany({ where, orderBy })
    const beds = await tx.bed.findMany({ where, orderBy })
    const tests = await tx.waterTest.findMany({ where, orderBy })
    const supplies = await tx.waterSupply.findMany({ where, orderBy, include: { periods: { orderBy } } })
    const tokens = await tx.searchToken.findMany({ where, orderBy: [{ siteId: 'asc' }, { token: 'asc' }] })
    return { customers, contacts, sites, tenures, softeners, tanks, beds, tests, supplies, tokens }
  })
}
