import { crc32, deflateRawSync } from 'node:zlib'

const bytesOf = (text: string) => new TextEncoder().encode(text)

const part = (inner: string) => `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${inner}`
const RELATIONS = 'http://schemas.openxmlformats.org/package/2006/relationships'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'

/** A zip file of some parts, deflated (APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16), fast enough for hundreds of MB. */
function zipped(parts: Record<string, string | Uint8Array>): Uint8Array {
  const bodies: Buffer[] = []
  const directory: Buffer[] = []
  let at = 0
  for (const [name, content] of Object.entries(parts)) {
    const bytes = Buffer.from(content as Uint8Array)
    const packed = deflateRawSync(bytes, { level: 1 })
    // From "version needed" to "extra field length": the same in both headers.
    const common = Buffer.alloc(26)
    common.writeUInt16LE(20, 0)
    common.writeUInt16LE(8, 4)
    common.writeUInt32LE(crc32(bytes), 10)
    common.writeUInt32LE(packed.length, 14)
    common.writeUInt32LE(bytes.length, 18)
    common.writeUInt16LE(name.length, 22)
    bodies.push(Buffer.from('PK\x03\x04', 'latin1'), common, Buffer.from(name, 'latin1'), packed)
    const rest = Buffer.alloc(14)
    rest.writeUInt32LE(at, 10)
    directory.push(Buffer.from('PK\x01\x02\x14\x00', 'latin1'), common, rest, Buffer.from(name, 'latin1'))
    at += 30 + name.length + packed.length
  }
  const listed = Buffer.concat(directory)
  const end = Buffer.alloc(22)
  end.write('PK\x05\x06', 'latin1')
  end.writeUInt16LE(Object.keys(parts).length, 8)
  end.writeUInt16LE(Object.keys(parts).length, 10)
  end.writeUInt32LE(listed.length, 12)
  end.writeUInt32LE(at, 16)
  return Buffer.concat([...bodies, listed, end])
}

/** The least workbook (ECMA-376 part 1, 12.3.24) around the rows of one sheet, written by hand so that it may hold what no spreadsheet would write. */
export function workbook(rows: string, more: Record<string, string | Uint8Array> = {}): Uint8Array {
  const parts: Record<string, string | Uint8Array> = {
    '[Content_Types].xml': part(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>',
    ),
    '_rels/.rels': part(
      `<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': part(
      `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="List" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': part(
      `<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    'xl/worksheets/sheet1.xml': part(`<worksheet xmlns="${MAIN}"><sheetData>${rows}</sheetData></worksheet>`),
    ...more,
  }
  return zipped(parts)
}

const textCell = (at: string, text: string) => `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`
const row = (line: number, ...cells: string[]) => `<row r="${line}">${cells.join('')}</row>`
const HEADER = row(1, textCell('A1', 'Name'), textCell('B1', 'Street'))
const listOf = (rows: number, more: (line: number) => string[] = () => []) =>
  HEADER +
  Array.from({ length: rows }, (_, index) => {
    const line = index + 2
    return row(line, textCell(`A${line}`, `Ann Poe ${line}`), textCell(`B${line}`, `${line} Elm St`), ...more(line))
  }).join('')

const MB = 1024 * 1024

/** Files of a few kB to 20 MB, each of which stopped a server that read it without limits, with words that its refusal has. */
export const HOSTILE_FILES: [name: string, make: () => Uint8Array, words: RegExp][] = [
  [
    'a workbook with one stray cell at XFD1048576',
    () => workbook(listOf(3) + row(1_048_576, textCell('XFD1048576', 'x'))),
    /cell XFD1048576/,
  ],
  [
    'a workbook of 20,000 rows with one stray cell in column XFD',
    () => workbook(listOf(20_000, (line) => (line === 7 ? [textCell('XFD7', 'x')] : []))),
    /cell XFD7/,
  ],
  [
    'a workbook of 20,000 rows with one stray cell in its last row',
    () => workbook(listOf(20_000) + row(1_048_576, textCell('B1048576', 'x'))),
    /row 1,048,576/,
  ],
  [
    'a workbook of 1 MB that unpacks to 200 MB of blanks',
    () => workbook('', { 'xl/theme.xml': new Uint8Array(200 * MB).fill(32) }),
    /unpacks to more than 150 MB/,
  ],
  [
    'a workbook with one long text that 130,000 cells name',
    () => {
      const cells = (line: number) => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('').map((letter) => `<c r="${letter}${line}" t="s"><v>0</v></c>`)
      const rows = Array.from({ length: 5_000 }, (_, index) => row(index + 1, ...cells(index + 1))).join('')
      const shared = `<sst xmlns="${MAIN}"><si><t>${'x'.repeat(3_000)}</t></si></sst>`
      const relations = `<Relationships xmlns="${RELATIONS}"><Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${OFFICE}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`
      return workbook(rows, { 'xl/sharedStrings.xml': part(shared), 'xl/_rels/workbook.xml.rels': part(relations) })
    },
    /40 million characters/,
  ],
  [
    'a workbook of 60 sheets',
    () =>
      workbook(listOf(3), Object.fromEntries(Array.from({ length: 60 }, (_, at) => [`xl/worksheets/sheet${at + 2}.xml`, part('<x/>')]))),
    /50 sheets/,
  ],
  ['a text with one cell of 19 MB', () => bytesOf(`Name,Street\nAnn Poe,${'x'.repeat(19 * MB)}\n`), /line 2, column B holds 19,922,944/],
  [
    'a text with two stray quotation marks 60 kB apart',
    () => {
      const lines = Array.from({ length: 4_000 }, (_, at) => `Ann Poe ${at},${at} Elm St`)
      lines[100] = 'Bo Dow,"1 Elm St'
      lines[3_100] = 'Cy Roe,2" Elm St'
      return bytesOf(`Name,Street\n${lines.join('\n')}\n`)
    },
    /quotation mark/,
  ],
  [
    'a text of 300 rows whose cells have 5,000 signs',
    () => bytesOf(`Name,Street,Notes,Tank,Phone\n${`${'x'.repeat(5_000)},`.repeat(4)}5\n`.repeat(300)),
    /5,000 characters/,
  ],
  ['a text of 20 MB of line ends', () => bytesOf(`Name,Street\n${'\n'.repeat(20 * MB - 12)}`), /200,000 lines/],
  ['a text of 20 MB of commas', () => bytesOf(','.repeat(20 * MB)), /200 columns/],
  ['a text of 200 kB of quotation marks', () => bytesOf('"a'.repeat(100_000)), /quotation mark/],
]
