import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readImport, readImports } from '@almanac/database/read/import-batches'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { workbook } from '../../../tests/support/hostile-files.ts'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { discardDraft } from './discard-draft.ts'
import { readAgain } from './read-again.ts'
import { readStoredFile } from './read-stored-file.ts'
import { batchOf, type Firm, makeFirm, prepare, rowsOf, upload } from './test-import.ts'

let firm: Firm

beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

const cell = (at: string, text: string) => `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`
const rowOf = (line: number, ...texts: string[]) =>
  `<row r="${line}">${texts.map((text, at) => cell(`${'AB'[at]}${line}`, text)).join('')}</row>`
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const sheetOf = (id: number, name: string) => `<sheet name="${name}" sheetId="${id}" r:id="rId${id}"/>`
const partOf = (id: number) => `<Relationship Id="rId${id}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${id}.xml"/>`
/** A workbook with what was ordered first, and the customers under two lines of title behind it (ECMA-376 part 1, 12.3.24). */
const twoSheets = () =>
  workbook(rowOf(1, 'Item', 'Pieces') + rowOf(2, 'Resin', '12'), {
    'xl/workbook.xml': `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheetOf(1, 'Orders')}${sheetOf(2, 'Customers')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${partOf(1)}${partOf(2)}</Relationships>`,
    'xl/worksheets/sheet2.xml': `<worksheet xmlns="${MAIN}"><sheetData>${rowOf(1, 'Round of', 'spring')}${rowOf(2, 'Who', 'Where')}${rowOf(3, 'Ann Poe', '1 Elm St')}${rowOf(4, 'Bo Dow', '2 Elm St')}</sheetData></worksheet>`,
  })

async function again(batchId: string, sheet: string | null, headingLine: number | null): Promise<string> {
  const { version } = await batchOf(firm, batchId)
  const read = await readAgain(firm, { commandId: newId(), batchId, version, sheet, headingLine })
  await readStoredFile({ companyId: firm.companyId, batchId: read.batchId })
  return read.batchId
}
const page = (batchId: string) => readImport(firm, batchId)
const cellsOf = async (batchId: string) => (await rowsOf(firm, batchId)).map((row) => row.cells)

test('another sheet and another line for the headings are read as chosen; what was read before is gone', async () => {
  const first = await upload(firm, twoSheets(), 'office.xlsx')
  expect(await page(first)).toMatchObject({ state: 'draft', sheet: 'Orders', sheets: ['Orders', 'Customers'], isKept: true })
  const second = await again(first, 'Customers', 2)
  expect(await page(second)).toMatchObject({
    state: 'draft',
    sheet: 'Customers',
    fileName: 'office.xlsx',
    headerLine: 2,
    totalRows: 2,
    isKept: true,
  })
  expect((await page(second)).columns.map((one) => one.header)).toEqual(['Who', 'Where'])
  expect(await cellsOf(second)).toEqual([
    ['Ann Poe', '1 Elm St'],
    ['Bo Dow', '2 Elm St'],
  ])
  expect(await batchOf(firm, first)).toMatchObject({ state: 'discarded', header: [] })
  expect(JSON.stringify(await rowsOf(firm, first))).not.toContain('Resin')
  expect((await readImports(firm, { limit: 10 })).rows.map((one) => one.id)).toEqual([second])
  // No line names the columns: each is a row.
  const third = await again(second, 'Customers', null)
  expect((await cellsOf(third)).map((cells) => cells[0])).toEqual(['Round of', 'Who', 'Ann Poe', 'Bo Dow'])
})

test('a choice that leaves no rows, or names no sheet, is refused with a sentence, and the file stays to be read otherwise', async () => {
  const first = await upload(firm, twoSheets(), 'office.xlsx')
  const second = await again(first, 'Customers', 900)
  expect(await page(second)).toMatchObject({
    state: 'refused',
    failure: 'Read like this, there are no rows. Nothing was imported.',
    isKept: true,
  })
  const third = await again(second, 'Customer', 2)
  expect(await page(third)).toMatchObject({ state: 'refused', failure: expect.stringContaining('no sheet "Customer"'), isKept: true })
  expect(await page(third)).toMatchObject({ sheets: ['Orders', 'Customers'] })
  expect(await cellsOf(await again(third, 'Customers', 2))).toHaveLength(2)
})

test('a file is kept as long as its draft may want it: not once it was handed over, discarded, or another came', async () => {
  const list = 'Name,Street\nAnn Poe,1 Elm St\n'
  const kept = () => inCompany(firm, (tx) => tx.importFilePiece.count({ where: { companyId: firm.companyId } }))
  const gone = async (batchId: string) => {
    const { version } = await batchOf(firm, batchId)
    const asked = readAgain(firm, { commandId: newId(), batchId, version, sheet: null, headingLine: 1 })
    await expect(asked).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('import it again') })
  }
  const first = await upload(firm, list)
  const second = await upload(firm, list)
  expect(await kept()).toBe(1)
  await gone(first)
  expect(await page(first)).toMatchObject({ state: 'draft', totalRows: 1, isKept: false })
  await discardDraft(firm, { commandId: newId(), batchId: second, version: 2 })
  expect(await kept()).toBe(0)
  await gone(second)
  await gone(await prepare(firm, list))
  expect(await kept()).toBe(0)
})
