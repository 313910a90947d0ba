import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import iconv from 'iconv-lite'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { exportProblems } from './export-problems.ts'
import { readUpload } from './read-upload.ts'
import { bringIn, bytesOf, type Firm, makeFirm, rowsOf, stateOf } from './test-import.ts'

let firm: Firm
const SHEETS = path.resolve(import.meta.dirname, '../../../prisma/demo/spreadsheets')
const sheet = (name: string) => readFile(path.join(SHEETS, name))

beforeAll(async () => {
  await testDatabase()
  firm = await makeFirm()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

describe('a file as it comes', () => {
  const text = 'Name;Street\r\nZoë Böhm;3 Kiln Ln\r\n'
  const rows = [['Name', 'Street'], ['Zoë Böhm', '3 Kiln Ln'], ['']]
  const utf16 = (mark: boolean) => new Uint8Array([...(mark ? [0xff, 0xfe] : []), ...Buffer.from(text, 'utf16le')])

  test.each([
    ['UTF-8', bytesOf(text), 'UTF-8'],
    ['UTF-8 with a mark', bytesOf(`\ufeff${text}`), 'UTF-8'],
    ['UTF-16 with a mark', utf16(true), 'UTF-16'],
    ['UTF-16 without a mark', utf16(false), 'UTF-16'],
    ['Windows-1252', new Uint8Array(Buffer.from(text, 'latin1')), 'Windows-1252'],
  ])('in %s is read, and says what was taken', async (_name, bytes, word) => {
    const read = await readUpload(bytes)
    expect(read.rows).toEqual(rows)
    expect(read.sentences.join(' ')).toContain(word)
    expect(read.sentences.join(' ')).toContain('semicolons')
  })

  test.each([
    ['an empty file', new Uint8Array(), 'empty'],
    ['a file of blank lines', bytesOf('\n\n , \n'), 'no rows'],
    ['a PDF', bytesOf('%PDF-1.7 and so on'), 'PDF'],
    ['a picture', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0]), 'picture'],
    ['an old workbook', new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0, 0]), '.xls'],
    ['something binary', new Uint8Array([1, 0, 2, 3, 0, 0, 7, 7, 7, 0, 1, 2]), 'can’t read this kind of file'],
    ['a damaged workbook', new Uint8Array([0x50, 0x4b, 3, 4, 9, 9, 9]), 'damaged'],
    ['too many rows', bytesOf('Name\n'.repeat(50_100)), '50,000'],
    ['an open quotation mark', bytesOf('Name,Town\n"Al,Here\nBo,There\n'), 'never closed'],
    ['more than 20 MB', new Uint8Array(20 * 1024 * 1024 + 1), '20 MB'],
  ])('that is %s is refused with a sentence', async (_name, bytes, words) => {
    await expect(readUpload(bytes)).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining(words) })
    await expect(readUpload(bytes)).rejects.toThrow('Nothing was imported.')
  })
})

describe('rows that cannot be read', () => {
  const bad =
    'Name,Street,Tank,Installed\nAl Poe,1 Elm St,10x54,2011\n=HYPERLINK(1),2 Elm St,banana,2012\nCy Dow,3 Elm St,9x48,2041\n,4 Elm St,9x48,2012\n'

  test('stop nothing, come back in a file that runs no formula, and go in once mended', async () => {
    const { batchId, done } = await bringIn(firm, bad, 'bad.csv')
    expect(done).toMatchObject({ created: 3, problem: 1, leftEmpty: 2 })
    const { bytes, fileName } = await exportProblems(firm, batchId)
    const csv = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
    expect(fileName).toBe('bad - rows to fix.csv')
    const lines = csv.replace('\ufeff', '').split('\r\n')
    expect(lines[0]).toBe('Name,Street,Tank,Installed,Fix: line,Fix: column,Fix: value,Fix: reason')
    expect(lines[1]).toMatch(/^'=HYPERLINK\(1\),2 Elm St,banana,2012,3,Tank,banana,/)
    expect(lines[2]).toMatch(/^Cy Dow,3 Elm St,9x48,2041,4,Installed,2041,.*future/)
    expect(lines[3]).toMatch(/^,4 Elm St,9x48,2012,5,Name,,/)
    const mended = csv.replace('banana,2012', '12x52,2012').replace('9x48,2041', '9x48,2014').replace('\r\n,4 Elm', '\r\nDi Fay,4 Elm')
    const again = await bringIn(firm, mended, fileName)
    expect(again.done).toMatchObject({ created: 1, updated: 2, problem: 0, leftEmpty: 0 })
    const state = await stateOf(firm)
    expect(state.customers.map((one) => one.name)).toEqual(['Al Poe', '=HYPERLINK(1)', 'Cy Dow', 'Di Fay'])
    expect((await bringIn(firm, mended, fileName)).done).toMatchObject({ unchanged: 3, created: 0 })
  })

  test.each([
    ['windows-1252', [0x46]],
    ['utf-8', [0xef, 0xbb, 0xbf]],
    ['utf-16le', [0xff, 0xfe]],
    ['utf-16be', [0xfe, 0xff]],
  ] as const)('come back in the letters and the order of the firm’s own file: %s', async (encoding, begins) => {
    const text =
      'Firma;Name;Street;Town;Tank;Email\nX;José Castañeda;5 Rue Été;Lark;10x54;nope\nY;Zoë Müller;6 Elm St;Lark;banana;a@example.com\n'
    const sent = iconv.encode(text, encoding, { addBOM: encoding !== 'windows-1252' })
    const { batchId } = await bringIn(firm, sent, `${encoding}.csv`)
    const problems = await exportProblems(firm, batchId)
    expect(problems.encoding).toBe(encoding)
    expect([...problems.bytes.slice(0, begins.length)]).toEqual(begins)
    const lines = new TextDecoder(encoding).decode(problems.bytes).split('\r\n')
    expect(lines[0]).toBe('Firma;Name;Street;Town;Tank;Email;Fix: line;Fix: column;Fix: value;Fix: reason')
    expect(lines[1]).toMatch(/^X;José Castañeda;5 Rue Été;Lark;10x54;nope;2;Email;nope;/)
    expect(lines[2]).toMatch(/^Y;Zoë Müller;6 Elm St;Lark;banana;a@example\.com;3;Tank;banana;/)
    // Mended and sent back as it came, it is read as what it is.
    const mended = iconv.encode(lines.join('\r\n').replace('nope', 'b@example.com').replace('banana', '9x48'), encoding, {
      addBOM: encoding !== 'windows-1252',
    })
    expect((await bringIn(firm, mended, problems.fileName)).done).toMatchObject({ customers: 0, problem: 0, leftEmpty: 0 })
  })

  test('come back parted as the firm’s own file was', async () => {
    const { batchId } = await bringIn(
      firm,
      'Name;Street;Tank;Email\nEd Gow;5 Elm St;10x54;nope\nEd Hill;6 Elm St;10x54;a@example.com\n',
      'semi.csv',
    )
    expect(
      Buffer.from((await exportProblems(firm, batchId)).bytes)
        .toString()
        .split('\r\n')[0],
    ).toBe('\ufeffName;Street;Tank;Email;Fix: line;Fix: column;Fix: value;Fix: reason')
  })

  test('of another firm are not found', async () => {
    const { batchId } = await bringIn(firm, bad, 'bad.csv')
    await expect(exportProblems(await makeFirm(), batchId)).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('the demo’s spreadsheets', () => {
  test('the tidy one goes in without a problem', async () => {
    const own = await makeFirm()
    expect((await bringIn(own, await sheet('tidy-customers.csv'))).done).toMatchObject({ created: 40, problem: 0 })
  })

  test('of the messy workbook six rows come back, five of which are in, with line, column, value and reason', async () => {
    const own = await makeFirm()
    const { batch, batchId, done } = await bringIn(own, await sheet('messy-customers.xlsx'), 'messy-customers.xlsx')
    expect(batch.mapping.sentences.join(' ')).toContain('"Customers" was read')
    expect(batch.headerLine).toBe(4)
    // One row has no name; of five a cell is left empty.
    expect(done).toMatchObject({ problem: 1, leftEmpty: 5, updated: 0 })
    const problems = (await rowsOf(own, batchId)).filter((row) => (row.problems as unknown[]).length > 0)
    expect(problems.map((row) => (row.problems as { column: string }[])[0]?.column)).toEqual([
      'Instaled',
      'Hard.',
      'Tel.',
      'Name',
      'Tank size',
      'Instaled',
    ])
    const { customers, sites, supplies } = await stateOf(own)
    const lettings = customers.filter((one) => one.name === 'Peverell Lettings')
    expect(lettings).toHaveLength(1)
    expect(sites.filter((one) => one.street === '2 Kiln Ln' || one.street === '77 Old Ferry Road').length).toBeGreaterThanOrEqual(2)
    const towns = supplies.filter((one) => one.kind === 'town').map((one) => one.name)
    expect(towns.sort()).toEqual(['Coldbrook', 'Tarnwick town'])
    const wells = supplies.filter((one) => one.kind === 'private-well')
    expect(wells.length).toBeGreaterThan(1)
    for (const well of wells) expect(sites.filter((one) => one.waterSupplyId === well.id)).toHaveLength(1)
    const before = await stateOf(own)
    expect((await bringIn(own, await sheet('messy-customers.xlsx'), 'messy-customers.xlsx')).done).toMatchObject({ created: 0, updated: 0 })
    expect(await stateOf(own)).toEqual(before)
  })

  test('the one with semicolons keeps its accents', async () => {
    const own = await makeFirm()
    const { batch } = await bringIn(own, await sheet('messy-customers-semicolon.csv'))
    expect(batch.mapping.sentences.join(' ')).toMatch(/Windows-1252.*semicolons/)
    expect((await stateOf(own)).customers.some((one) => one.name.includes('Castañeda'))).toBe(true)
  })
})
