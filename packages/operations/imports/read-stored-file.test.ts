import { createHash } from 'node:crypto'
import { mkdtemp, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readImports } from '@almanac/database/read/import-batches'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { checkImport } from './check-import.ts'
import { discardDraft } from './discard-draft.ts'
import { queueImport } from './queue-import.ts'
import { giveUpReading, readStoredFile } from './read-stored-file.ts'
import { storeUpload } from './store-upload.ts'
import { batchOf, type Firm, makeFirm, rowsOf, upload } from './test-import.ts'

let folder: string

beforeAll(async () => {
  await testDatabase()
  folder = await mkdtemp(path.join(os.tmpdir(), 'kept-'))
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

async function sent(firm: Firm, contents: string | Uint8Array): Promise<string> {
  const file = path.join(folder, 'list.csv')
  await writeFile(file, contents)
  return (await storeUpload(firm, { fileName: 'list.csv', file })).batchId
}
const task = (firm: Firm, batchId: string) => ({ companyId: firm.companyId, batchId })
/** Letters of two bytes that no packing makes much shorter: 64 of them, drawn evenly. */
const noteOf = (n: number) =>
  Array.from(createHash('shake256', { outputLength: 300 }).update(String(n)).digest(), (byte) =>
    String.fromCodePoint(0xc0 + (byte % 64)),
  ).join('')
const piecesOf = (firm: Firm) => inCompany(firm, (tx) => tx.importFilePiece.count({ where: { companyId: firm.companyId } }))
const list = (rows: number) =>
  `Name,Street,Notes\n${Array.from({ length: rows }, (_, n) => `Ann ${n},${n} Elm St,${noteOf(n)}`).join('\n')}\n`

test('a file of several pieces is put together again, byte by byte, read once, and the file stays for its draft', async () => {
  const firm = await makeFirm()
  const batchId = await sent(firm, list(12_000))
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'reading', totalRows: 0 })
  // Seven megabytes, which packed are still over two of the pieces of 1 MB.
  expect(await piecesOf(firm)).toBeGreaterThanOrEqual(3)
  // Two tries at once, as where a worker was given up that still works.
  await Promise.all([readStoredFile(task(firm, batchId)), readStoredFile(task(firm, batchId))])
  await readStoredFile(task(firm, batchId))
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'draft', totalRows: 12_000, version: 2, header: ['Name', 'Street', 'Notes'] })
  const rows = await rowsOf(firm, batchId)
  expect(rows).toHaveLength(12_000)
  expect(rows.filter((row, n) => row.cells[0] !== `Ann ${n}` || row.cells[2] !== noteOf(n))).toEqual([])
  expect(await piecesOf(firm)).toBeGreaterThanOrEqual(3)
})

test('a file that an earlier release kept as it came is read too', async () => {
  const firm = await makeFirm()
  const batchId = await sent(firm, list(1))
  const { companyId } = firm
  await inCompany(firm, async (tx) => {
    await tx.importFilePiece.deleteMany({ where: { companyId } })
    for (const [place, part] of ['Name,Street\nÅs', 'a Berg,7 Elm St\n'].entries())
      await tx.importFilePiece.create({ data: { companyId, id: newId(), batchId, place, bytes: new TextEncoder().encode(part) } })
  })
  await readStoredFile(task(firm, batchId))
  expect((await rowsOf(firm, batchId)).map(({ cells }) => cells)).toEqual([['Åsa Berg', '7 Elm St']])
})

test('a second file of a company waits until the first is read; of another company it does not', async () => {
  const [firm, other] = [await makeFirm(), await makeFirm()]
  const first = await sent(firm, list(1))
  await expect(sent(firm, list(2))).rejects.toMatchObject({ code: 'rate-limited', message: expect.stringContaining('still being read') })
  await readStoredFile(task(other, await sent(other, list(1))))
  await readStoredFile(task(firm, first))
  const second = await sent(firm, list(2))
  await readStoredFile(task(firm, second))
  expect([await rowsOf(firm, first), await rowsOf(firm, second)].map((rows) => rows.length)).toEqual([1, 2])
})

test('a file that is no list is refused with its sentence, leaves no rows, and the next one is read', async () => {
  const firm = await makeFirm()
  // By its first bytes, at once.
  await expect(sent(firm, '%PDF-1.7 and so on')).rejects.toMatchObject({
    code: 'invalid',
    message: expect.stringContaining('This is a PDF'),
  })
  await expect(sent(firm, '')).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining('empty') })
  const batchId = await sent(firm, 'Name,Street\n"Al,1 Elm St\nBo,2 Elm St\n')
  await readStoredFile(task(firm, batchId))
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'refused', failure: expect.stringContaining('never closed') })
  expect([await rowsOf(firm, batchId), await piecesOf(firm)]).toEqual([[], 0])
  const next = await sent(firm, list(1))
  // What ended every try says so, and holds up no other file.
  await giveUpReading(task(firm, next))
  expect(await batchOf(firm, next)).toMatchObject({ state: 'refused', failure: expect.stringContaining('Nothing was imported') })
  expect(await piecesOf(firm)).toBe(0)
  // A draft is past its reading: nothing is taken from it.
  const draft = await sent(firm, list(1))
  await readStoredFile(task(firm, draft))
  await giveUpReading(task(firm, draft))
  expect(await batchOf(firm, draft)).toMatchObject({ state: 'draft' })
})

test('a draft that is discarded keeps its name and nothing of what it said; one that was imported, or is being read, is not discarded', async () => {
  const firm = await makeFirm()
  const batchId = await sent(firm, 'Name,Street,Notes\nZenobia Quill,9 Elm St,gate code 4711\n')
  const discard = (version: number) => discardDraft(firm, { commandId: newId(), batchId, version })
  await expect(discard(1)).rejects.toMatchObject({ code: 'conflict' })
  await readStoredFile(task(firm, batchId))
  await expect(discard(1)).rejects.toMatchObject({ code: 'version-conflict' })
  await discard(2)
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'discarded', header: [], version: 3, fileName: 'list.csv', totalRows: 1 })
  expect(JSON.stringify([await batchOf(firm, batchId), await rowsOf(firm, batchId)])).not.toMatch(/Zenobia|Elm|4711/)
  expect((await readImports(firm, { limit: 10 })).rows).toEqual([])
  await expect(discard(3)).rejects.toMatchObject({ code: 'conflict' })
})

test('what was chosen for a column of an imported list is suggested for the next one; what was chosen for a draft is not', async () => {
  const firm = await makeFirm()
  const LIST = 'Name,Street,Route\nAnn Poe,1 Elm St,Purity 30\n'
  const suggested = async (batchId: string) => (await batchOf(firm, batchId)).mapping.columns.map((one) => one.field)
  const checked = async (unit: 'softenerLabel' | 'notes') => {
    const batchId = await upload(firm, LIST)
    const { mapping, version } = await batchOf(firm, batchId)
    const columns = mapping.columns.map(({ column, field }) => ({ column, field: column === 2 ? unit : field }))
    return { batchId, ...(await checkImport(firm, { commandId: newId(), batchId, version, columns, listRightOn: null, supplies: [] })) }
  }
  const { batchId, version } = await checked('softenerLabel')
  await queueImport(firm, { commandId: newId(), batchId, version })
  await checked('notes')
  expect(await suggested(await upload(firm, LIST))).toEqual(['customerName', 'street', 'softenerLabel'])
  // Another company's choices are its own.
  const other = await makeFirm()
  expect((await batchOf(other, await upload(other, LIST))).mapping.columns[2]?.field).not.toBe('softenerLabel')
})
