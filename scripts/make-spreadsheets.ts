import { writeFile } from 'node:fs/promises'
import path from 'node:path'
import writeExcelFile from 'write-excel-file/node'

/** Writes the demo's spreadsheets anew: invented firms' lists, one tidy, one as ugly as they come. The same output each time: no chance, no clock. */
const FOLDER = path.resolve(import.meta.dirname, '../prisma/demo/spreadsheets')

const FIRST = ['Anna', 'Jörg', 'Zoë', 'Renée', 'Björn', 'Maeve', 'Iñaki', 'Tess', 'Ole', 'Agnès', 'Walt', 'Priya', 'Hal', 'Søren', 'Dora']
const LAST = [
  'Böhm',
  'Castañeda',
  "O'Rourke",
  'Whitlow',
  'Lindqvist',
  'Peverell',
  'Nakagawa',
  'Ferris',
  'Tamm',
  'Dunmore',
  'Okafor',
  'Vance',
  'Lisle',
]
const STREETS = [
  'Kiln Ln',
  'Heron St',
  'Mill Rd',
  'Quarry Ave.',
  "St Mary's St",
  'Old Ferry Road',
  'Plum Ct',
  'Saddler Dr',
  'N Tarn Blvd',
  'Bellows Pl',
]
const TOWNS = ['Tarnwick', 'Upper Tarnwick', 'Coldbrook']

const pick = <T>(list: readonly T[], index: number): T => list[index % list.length] as T
const two = (value: number) => String(value).padStart(2, '0')
const nameOf = (index: number) => `${pick(FIRST, index * 7 + 1)} ${pick(LAST, index * 5 + (index >> 4))}`
const streetOf = (index: number) => `${((index * 37) % 240) + 1} ${pick(STREETS, index * 3 + (index >> 3))}`
const digits = (index: number) => String(1000 + ((index * 739) % 9000))

const csv = (rows: readonly (readonly string[])[], delimiter: string) =>
  rows
    .map((row) =>
      row.map((cell) => (/["\r\n]/.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(delimiter),
    )
    .join('\r\n')

function tidy(): string[][] {
  const header = [
    'Customer no',
    'Name',
    'Phone',
    'E-mail',
    'Street',
    'Town',
    'Zip',
    'Tank',
    'Resin',
    'Installed',
    'Last seen',
    'Hardness (gpg)',
    'Water supply',
    'OK to email?',
  ]
  const rows = Array.from({ length: 40 }, (_, index) => [
    `T-${200 + index}`,
    nameOf(index + 3),
    `555-013-${digits(index)}`,
    `household${index + 1}@example.com`,
    streetOf(index + 50),
    pick(TOWNS, index),
    `8410${index % 3}`,
    pick(['9x48', '10x54', '12x52', '14x65'], index),
    pick(['8 %', '10 %'], index >> 1),
    `${2006 + (index % 17)}-${two((index % 12) + 1)}-${two((index % 27) + 1)}`,
    `${2024 + (index % 2)}-${two((index % 9) + 1)}-15`,
    String(12 + (index % 18)),
    pick(['Tarnwick town', 'Coldbrook wells'], index >> 2),
    pick(['yes', 'no', 'yes'], index),
  ])
  return [header, ...rows]
}

type Cell = string | number | Date | null

const PHONES = [
  (d: string) => `(555) 014-${d}`,
  (d: string) => `555.014.${d}`,
  (d: string) => `+1 555 014 ${d}`,
  (d: string) => `555014${d}`,
  (d: string) => `cell: 555-014-${d}`,
  (d: string) => `555-014-${d} / 555-015-${d}`,
  (d: string) => `555 014 ${d} x12`,
]
const TANKS = ['10x54', '10 x 54"', '48,000 grain', '42 L', '9x48', '12x52', 'twin 14x65', '32k grain', '1.5 cu ft', '10 X 44', '']
const HARDNESS = ['18 gpg', '310 mg/L', '22', '17', '25 grains', '400 ppm', '', '14.5 gpg']
const NOTES = [
  'rebed 2016',
  '',
  'dog, ring first',
  'new resin June 2019',
  'quoted rebed 2022, declined',
  '',
  'installed 2008, rebedded 2017',
  'key under blue pot',
  'rebed 05/2021',
  '',
]

function installed(index: number): Cell {
  const year = 2003 + (index % 18)
  const forms: Cell[] = [
    new Date(Date.UTC(year, index % 12, (index % 27) + 1)),
    year,
    `before ${year + 4}`,
    `ca. ${year}`,
    '',
    `${two((index % 12) + 1)}/${two(13 + (index % 15))}/${year}`,
    `spring ${year}`,
    `${pick(['Mar', 'Jul', 'Oct'], index)} ${year}`,
    'n/a',
  ]
  return pick(forms, index)
}

/** Rows that cannot be read, each for another reason. */
const BAD: readonly Cell[][] = [
  ['Faye Arden', '555-014-0001', '4 Heron St', 'Tarnwick', '10x54', '2031', '', '18', 'Tarnwick town', '', ''],
  ['Gus Pell', '555-014-0002', '6 Heron St', 'Tarnwick', '10x54', '2011', '', 'very hard', 'Tarnwick town', '', ''],
  ['Ida Moss', '12', '8 Heron St', 'Tarnwick', '10x54', '2012', '', '18', 'Tarnwick town', '', ''],
  ['', '555-014-0004', '10 Heron St', 'Tarnwick', '10x54', '2012', '', '18', 'Tarnwick town', '', ''],
  ['Kit Salter', '555-014-0005', '12 Heron St', 'Tarnwick', 'the blue one', '2012', '', '18', 'Tarnwick town', '', ''],
  ['Lou Brandt', '555-014-0006', '14 Heron St', 'Tarnwick', '10x54', '=HYPERLINK("http://example.com","2012")', '', '18', '', '', 'maybe'],
]

function messy(): Cell[][] {
  const header = [
    'Name',
    'Tel.',
    'Adress',
    'City/Town',
    'Tank size',
    'Instaled',
    'Last Service',
    'Hard.',
    'Water source',
    'Remarks',
    'OK to contact?',
    'Route',
  ]
  const rows: Cell[][] = Array.from({ length: 108 }, (_, index) => [
    index % 11 === 4 ? `${pick(LAST, index * 5)}, ${pick(FIRST, index * 7)}` : nameOf(index),
    pick(PHONES, index)(digits(index + 100)),
    streetOf(index),
    pick(TOWNS, index),
    pick(TANKS, index),
    installed(index),
    index % 4 === 0 ? new Date(Date.UTC(2022 + (index % 4), index % 9, (index % 27) + 1)) : index % 4 === 1 ? `${2021 + (index % 4)}` : '',
    pick(HARDNESS, index * 3),
    pick(['Tarnwick town', 'Tarnwick Town', 'well', 'Coldbrook'], index >> 1),
    pick(NOTES, index),
    pick(['yes', 'no', '', 'e-mail only', 'phone'], index),
    `R${(index % 4) + 1}`,
  ])
  const landlord = (street: string): Cell[] => [
    'Peverell Lettings',
    '555-014-7700',
    street,
    'Tarnwick',
    '14x65',
    '2014',
    '',
    '20 gpg',
    'Tarnwick town',
    '',
    'yes',
    'R2',
  ]
  rows.splice(20, 0, landlord('2 Kiln Ln'))
  rows.splice(60, 0, landlord('77 Old Ferry Road'))
  rows.splice(40, 0, ['Rowan Ash', '555-014-7701', '', 'Coldbrook', '10x54', '2013', '', '', 'well', 'no street on file', '', 'R1'])
  rows.splice(
    90,
    0,
    Array.from({ length: 12 }, () => null),
  )
  for (const [index, bad] of BAD.entries()) rows.splice(10 + index * 17, 0, [...bad, 'R3'])
  rows.push([
    'Tarnwick Bakehouse & Café',
    '555-014-7702',
    '1 Mill Rd',
    'Tarnwick',
    'twin 14x65',
    'before 2015',
    new Date(Date.UTC(2025, 3, 9)),
    '380 mg/L',
    'Tarnwick town',
    'rebed 2016',
    'yes',
    'R1',
  ])
  const blank: Cell[] = Array.from({ length: 12 }, () => null)
  const title = (text: string): Cell[] => [text, ...blank.slice(1)]
  return [title('SERVICE LIST – all routes'), title('printed for the office, do not throw away'), blank, header, ...rows]
}

/** Letters of Windows-1252 used here all stand at their Latin-1 places, but for the dash. */
const windows1252 = (text: string) => Buffer.from(text.replaceAll('–', '\u0096'), 'latin1')

const plain = (cell: Cell) =>
  cell instanceof Date ? `${two(cell.getUTCDate())}/${two(cell.getUTCMonth() + 1)}/${cell.getUTCFullYear()}` : String(cell ?? '')

const rows = messy()
await writeFile(path.join(FOLDER, 'tidy-customers.csv'), `${csv(tidy(), ',')}\r\n`)
const cells = rows.map((row) =>
  row.map((cell) => (cell instanceof Date ? { value: cell, type: Date, format: 'mm/dd/yyyy' } : cell === '' ? null : cell)),
)
await writeExcelFile([
  { data: [], sheet: 'Cover' },
  { data: cells, sheet: 'Customers' },
]).toFile(path.join(FOLDER, 'messy-customers.xlsx'))
// The other file's dates put the day first, so its American ones are left out.
const european = rows.map((row, index) => (index > 3 && /^\d\d\/\d\d\/\d{4}$/.test(String(row[5])) ? row.with(5, '') : row))
await writeFile(
  path.join(FOLDER, 'messy-customers-semicolon.csv'),
  windows1252(
    `${csv(
      european.map((row) => row.map(plain)),
      ';',
    )}\r\n`,
  ),
)
