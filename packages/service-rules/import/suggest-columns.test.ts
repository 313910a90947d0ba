import { describe, expect, test } from 'vitest'
import type { ImportField } from './fields.ts'
import { scoreHeader } from './score-header.ts'
import { suggestColumns } from './suggest-columns.ts'

const today = '2026-05-04'
const best = (header: string) => [...scoreHeader(header)].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null
const fields = (rows: string[][]) => suggestColumns(rows, today).columns.map((column) => column.field)

describe('a header by its words', () => {
  test.each([
    ['Cust #', 'referenceNumber'],
    ['customer_id', 'referenceNumber'],
    ['CUSTOMER NAME', 'customerName'],
    ['Name of customer', 'customerName'],
    ['Costumer', 'customerName'],
    ['Surname', 'customerName'],
    ['Contact', 'contactName'],
    ['Phone no.', 'phone'],
    ['Telefone', 'phone'],
    ['Cell Phone', 'phone'],
    ['E-Mail', 'email'],
    ['emial', 'email'],
    ['Adress', 'street'],
    ['Service address', 'street'],
    ['City/Town', 'town'],
    ['ZIP', 'postcode'],
    ['Post Code', 'postcode'],
    ['State', 'region'],
    ['Gate code', 'accessNotes'],
    ['Access notes', 'accessNotes'],
    ['Softener model', 'softenerLabel'],
    ['Tank position', 'tankPosition'],
    ['Tnak Size', 'tank'],
    ['tank_size', 'tank'],
    ['Size of tank', 'tank'],
    ['Grain capacity', 'tank'],
    ['No. of tanks', 'tankCount'],
    ['Resin (cu ft)', 'resinVolume'],
    ['resinCuFt', 'resinVolume'],
    ['Resin type', 'resinKind'],
    ['X-link crosslink', 'resinKind'],
    ['Instaled', 'installed'],
    ['Put in', 'installed'],
    ['Fitted', 'installed'],
    ['Date fitted', 'installed'],
    ['Einbau', 'installed'],
    ['Eingebaut am', 'installed'],
    ['Fecha de instalación', 'installed'],
    ['Harzwechsel', 'bedBegan'],
    ['Letzte Wartung', 'lastSeen'],
    ['Straße', 'street'],
    ['Wasserhärte °dH', 'hardness'],
    ['Teléfono', 'phone'],
    ['Date of install', 'installed'],
    ['Instalation date', 'installed'],
    ['Last rebed', 'bedBegan'],
    ['Resin last changed', 'bedBegan'],
    ['LastService', 'lastSeen'],
    ['date last visited', 'lastSeen'],
    ['Water source', 'supplyName'],
    ['Disinfectent', 'disinfectant'],
    ['Hardness (gpg)', 'hardness'],
    ['Raw hardnes mg/L', 'hardness'],
    ['Fe ppm', 'iron'],
    ['Free Cl2', 'chlorine'],
    ['Remarks', 'notes'],
    ['OK to email?', 'mayEmail'],
    ['OK to call', 'mayPhone'],
    ['May we mail?', 'mayWrite'],
    ['Consent', 'consent'],
  ] satisfies [string, ImportField][])('%j is %s', (header, field) => expect(best(header)).toBe(field))

  test.each(['Date', 'Widget', '', '???', 'Colour of van'])('%j is nothing', (header) => {
    expect(Math.max(0, ...scoreHeader(header).values())).toBeLessThan(0.45)
  })
})

const records = [
  ['1001', 'Smith, John', '14 Orchard Ln', 'Millbrook', '12345', '555-010-4477', 'a@b.com', '10x54', '18', '14/03/2009', 'rebed 2016'],
  ['1002', 'Ada Byrd', '9 Elm St', 'Millbrook', '12345', '555-010-4471', '', '48k', '22', '2011', 'dog'],
  ['1003', 'Mill Bakery', '1 Weir Rd', 'Alder', '12399', '(555) 010-4400', 'x@y.org', 'twin 14x65', '25 gpg', 'before 2015', ''],
]
const header = ['Cust #', 'NAME', 'Adress', 'City', 'Zip', 'Phone no.', 'E-Mail', 'Tnak Size', 'Hardness', 'Instaled', 'Comments']
const expected = [
  'referenceNumber',
  'customerName',
  'street',
  'town',
  'postcode',
  'phone',
  'email',
  'tank',
  'hardness',
  'installed',
  'notes',
]

describe('a whole file', () => {
  test('title lines above the header are passed over', () => {
    const file = suggestColumns([['Brookside Softwater, export of 3 May 2024'], [], header, ...records], today)
    expect(file).toMatchObject({ headerRow: 2, firstRecordRow: 3, header })
    expect(file.columns.map((column) => column.field)).toEqual(expected)
    expect(file.columns.every((column) => column.confidence === 'sure')).toBe(true)
  })

  test('the order of the columns makes no difference', () => {
    const turned = [header, ...records].map((row) => [...row].reverse())
    expect(fields(turned)).toEqual([...expected].reverse())
  })

  test('without a header the contents decide, and what they cannot show is left open', () => {
    const file = suggestColumns(records, today)
    expect(file).toMatchObject({ headerRow: null, firstRecordRow: 0 })
    const byColumn = file.columns.map((column) => column.field)
    expect([byColumn[2], byColumn[5], byColumn[6], byColumn[7]]).toEqual(['street', 'phone', 'email', 'tank'])
    expect(file.columns[9]).toMatchObject({ field: null, confidence: 'none', reason: expect.stringMatching(/has dates/) })
  })

  test('each further column of numbers is one more phone, whatever stands over it', () => {
    const rows = [
      ['Name', 'Cell', 'Tel', 'Ph. shop'],
      ['Bo Hall', '555-010-9911', '555-010-1911', '555-010-0011'],
      ['Al Poe', '555-010-9912', '', '555-010-0012'],
    ]
    expect(fields(rows)).toEqual(['customerName', 'phone', 'otherPhone', 'otherPhone'])
    expect(suggestColumns(rows, today).columns[2]).toMatchObject({ confidence: 'sure', reason: expect.stringMatching(/"Tel"/) })
  })

  test('headers that contradict their contents are overruled, with the reason', () => {
    const file = suggestColumns(
      [
        ['Name', 'Email', 'Phone'],
        ['Bo Hall', '555-010-9911', 'bo@x.org'],
        ['Al Poe', '555-010-9912', 'al@x.org'],
      ],
      today,
    )
    expect(file.columns.map((column) => column.field)).toEqual(['customerName', 'phone', 'email'])
    expect(file.columns[1]?.reason).toBe('The header says "Email", but the contents look like phone.')
  })

  test('a bare hardness asks for its unit, one named in the header does not', () => {
    const rows = (title: string, values: string[]) =>
      suggestColumns([['Name', title], ...values.map((value) => ['Al Poe', value])], today).columns[1]
    expect(rows('Hardness', ['18', '22'])).toMatchObject({ hardnessUnit: 'gpg', ask: expect.stringMatching(/grains per gallon/) })
    expect(rows('Hardness', ['310', '280'])).toMatchObject({ hardnessUnit: 'mg/L', ask: expect.stringMatching(/mg\/L/) })
    // One list of 3,000 rows: "18" beside a "320" is no soft water, and 320 gpg is no water at all.
    expect(rows('Hardness', ['18', '19', '320', '22'])).toMatchObject({
      hardnessUnit: 'each-by-size',
      ask: expect.stringMatching(/fits its size/),
    })
    // Asked by the group, with what most of it say.
    expect(rows('Hardness', ['19', '19', '19', '18', '320', '320', '290'])?.ask).toContain(
      '4, most often 19 (3 times) look like grains per gallon, 3, most often 320 (2 times) like mg/L',
    )
    expect(rows('Hardness (mg/L)', ['18', '22'])).toMatchObject({ hardnessUnit: 'mg/L', ask: null })
  })

  test('the order of dates comes from the column itself, or is asked', () => {
    const rows = (values: string[]) =>
      suggestColumns([['Name', 'Installed'], ...values.map((value) => ['Al Poe', value])], today).columns[1]
    expect(rows(['03/04/2015', '14/04/2015'])).toMatchObject({ dayOrder: 'day-first', ask: null })
    expect(rows(['03/04/2015', '05/04/2015'])).toMatchObject({ dayOrder: 'undecided', ask: expect.stringMatching(/Which comes first/) })
    expect(rows(['2015', '2016'])).toMatchObject({ ask: null })
  })

  test('a field is given to one column, but names and address lines join', () => {
    const rows = [
      ['First Name', 'Last Name', 'Address 1', 'Address 2', 'Phone', 'Cell phone'],
      ['Al', 'Poe', '1 Elm St', 'Apt 2', '555-010-9911', '555-010-9912'],
    ]
    expect(fields(rows)).toEqual(['customerName', 'customerName', 'street', 'street', 'phone', 'otherPhone'])
  })

  test('the columns of a mended file are left out', () => {
    expect(
      fields([
        ['Name', 'Fix: line', 'Mend: reason'],
        ['Al Poe', '3', 'The phone is wrong and needs to be typed again'],
      ]),
    ).toEqual(['customerName', null, null])
  })

  test.each([
    [[]],
    [[[]]],
    [[['']]],
    [
      [
        ['', ''],
        ['', ''],
      ],
    ],
  ])('an empty file %j gives no suggestion and no error', (rows) =>
    expect(fields(rows as string[][]).every((field) => field === null)).toBe(true),
  )
})
