import { describe, expect, test } from 'vitest'
import { columnLetters } from './clean-cell.ts'
import { mappingProblems } from './gather-cells.ts'
import type { ColumnMapping, ImportedRecord } from './import-types.ts'
import { matchKeys } from './match-keys.ts'
import { neutraliseFormula } from './neutralise.ts'
import { isEmptyRow, readRow } from './read-row.ts'

const options = { today: '2026-05-04', display: { locale: 'en-US' } }
const fieldOrder = [
  'referenceNumber',
  'customerName',
  'phone',
  'otherPhone',
  'email',
  'street',
  'postcode',
  'town',
  'tank',
  'installed',
  'lastSeen',
  'notes',
  'hardness',
  'consent',
] as const
const mapping: ColumnMapping = {
  header: ['No', 'Name', 'Phone', 'Phone 2', 'Mail', 'Street', 'Zip', 'Town', 'Tank', 'Installed', 'Seen', 'Notes', 'Hard', 'Contact?'],
  columns: fieldOrder.map((field, column) => ({ column, field, ...(field === 'hardness' ? { hardnessUnit: 'gpg' as const } : {}) })),
}
type Cells = Partial<Record<(typeof fieldOrder)[number], string>>
const cells = (values: Cells) => fieldOrder.map((field) => values[field] ?? '')
const reading = (values: Cells) => readRow(cells({ customerName: 'Al Poe', ...values }), mapping, options)
function record(values: Cells): ImportedRecord {
  const row = reading(values)
  if (!row.ok) throw new Error(row.problems.map((problem) => problem.reason).join(' '))
  return row.record
}

describe('a row', () => {
  test('is read in full', () => {
    expect(
      reading({
        referenceNumber: '7',
        phone: '555-010-4477',
        street: '14 Orchard Ln',
        tank: 'twin 10x54',
        installed: '2009',
        lastSeen: '2023-04-23',
        notes: 'rebed 2016',
        hardness: '18',
        consent: 'email only',
      }),
    ).toMatchObject({
      ok: true,
      record: {
        referenceNumber: '7',
        customerName: 'Al Poe',
        contact: { phone: '555-010-4477', email: null, consent: { email: true, phone: false } },
        softener: { tankCount: 2, tank: { diameterIn: 10 }, installed: { earliestDay: '2009-01-01' } },
        bed: {
          began: { earliestDay: '2016-01-01', latestDay: '2016-12-31' },
          beganFrom: 'notes-rebed',
          lastSeen: { latestDay: '2023-04-23' },
        },
        water: { hardness: { hardnessGpg: 18 } },
      },
      assumptions: [{ column: 'Notes', field: 'notes', sentence: 'The present bed was taken from the notes: "rebed 2016".' }],
    })
  })

  test('without more than a name is still a record', () => {
    expect(record({}).bed).toEqual({ resinKind: null, resinVolume: null, began: null, beganFrom: null, earlier: [], lastSeen: null })
  })

  test('lists every problem, by the column as the firm names it', () => {
    expect(readRow(cells({ tank: 'banana', hardness: 'soft-ish', installed: '2030' }), mapping, options)).toEqual({
      ok: false,
      problems: [
        { kind: 'left-out', column: 'Name', field: 'customerName', value: '', reason: 'The customer name is empty. Type a name.' },
        { kind: 'left-empty', column: 'Tank', field: 'tank', value: 'banana', reason: expect.stringContaining('not understood') },
        { kind: 'left-empty', column: 'Installed', field: 'installed', value: '2030', reason: expect.stringContaining('future') },
        { kind: 'left-empty', column: 'Hard', field: 'hardness', value: 'soft-ish', reason: expect.stringContaining('18 gpg') },
      ],
    })
  })

  test('a value that cannot be read leaves its cell empty, and the customer goes in', () => {
    const read = readRow(cells({ customerName: 'Al Poe', tank: '10x54', phone: '3,53155E+11', hardness: 'very hard' }), mapping, options)
    expect(read).toMatchObject({
      ok: true,
      record: { customerName: 'Al Poe', contact: { phone: null }, softener: { tank: { diameterIn: 10 } }, water: { hardness: null } },
      problems: [
        { kind: 'left-empty', column: 'Phone', value: '3,53155E+11' },
        { kind: 'left-empty', column: 'Hard', value: 'very hard' },
      ],
    })
  })

  test.each([
    ['notes', 'Mr Poe deceased, ask for son', /may have died/],
    ['notes', 'moved out 2023, new owner', /may have moved/],
    ['customerName', 'Al Poe (house sold)', /may have moved/],
    ['notes', 'unit removed 2019', /softener may be gone/],
    ['notes', 'DO NOT CALL', /asked not to be contacted/],
  ] as const)('%s "%s" goes in, and is put before a person', (field, text, reason) => {
    const read = readRow(cells({ customerName: 'Al Poe', [field]: text }), mapping, options)
    expect(read.ok).toBe(true)
    expect(read.problems).toMatchObject([{ kind: 'decide', reason: expect.stringMatching(reason) }])
  })

  test.each(['sold 4 bags of salt', 'old motor died, replaced', 'removed the bypass handle', 'customer called'])(
    '"%s" is nothing to decide',
    (notes) => expect(readRow(cells({ customerName: 'Al Poe', notes }), mapping, options).problems).toEqual([]),
  )

  test('"do not call" is a no, whatever another column says', () => {
    expect(record({ notes: 'gate code 12; do not call', consent: 'yes' }).contact.consent).toEqual({
      ...{ email: false, phone: false, text: false, letter: false },
    })
  })

  test.each([
    [{ customerName: 'TOTAL', tank: '38 units' }, /looks like a total/],
    [{ customerName: 'Sub-total', hardness: '12' }, /looks like a total/],
    [{ customerName: 'SALTGATE' }, /looks like a title/],
    [{ customerName: 'North side:' }, /looks like a title/],
    [{ customerName: 'Name', tank: 'Tank', installed: 'Installed' }, /repeats the headings/],
  ])('%o is no customer', (row, reason) => {
    expect(readRow(cells(row), mapping, options)).toMatchObject({
      ok: false,
      problems: [{ kind: 'left-out', reason: expect.stringMatching(reason) }],
    })
  })

  test.each([
    { customerName: 'Al Poe' },
    { customerName: 'TOTAL HOME CARE', phone: '555 201 3344', tank: '10x54', installed: '2012', hardness: '12', notes: 'x' },
  ])('%o is one', (row) => expect(readRow(cells(row), mapping, options).ok).toBe(true))

  test.each(['n/a', 'N/A', '-', '?', 'unknown', ' ', '—', '#N/A', 'TBD', '\u00a0'])('%j in a cell says nothing', (text) =>
    expect(record({ tank: text, installed: text, hardness: text }).softener.tank).toBeNull(),
  )

  test('cells of a mended file lose what was put before them', () => {
    expect(record({ phone: neutraliseFormula('+44 1632 960123') }).contact.phone).toBe('+44 1632 960123')
  })

  test('columns chosen as one field that hold more than 8,000 characters together are a problem, weighed no further', () => {
    const notes = (signs: number): ColumnMapping => ({
      header: ['Name', ...Array.from({ length: signs / 4_000 }, (_, at) => `Notes ${at + 1}`)],
      columns: Array.from({ length: 1 + signs / 4_000 }, (_, column) => ({ column, field: column === 0 ? 'customerName' : 'notes' })),
    })
    const row = ['Al Poe', ...Array.from({ length: 50 }, () => 'x'.repeat(3_990))]
    expect(readRow(row, notes(8_000), options).ok).toBe(true)
    expect(readRow(row, notes(12_000), options)).toEqual({
      ok: false,
      problems: [
        {
          ...{ kind: 'left-out', column: 'Notes 1', field: 'notes', value: `${'x'.repeat(100)}…` },
          // Three times 3,990 and two joints of two signs.
          reason:
            'The columns chosen as "Notes" hold 11,974 characters together; at most 8,000 are read. Shorten them, or choose fewer of them.',
        },
      ],
    })
  })

  test('a short row is no error', () => expect(readRow(['7', 'Al Poe'], mapping, options).ok).toBe(true))
  test('numbers are kept apart, from one cell or several; the same twice is one, and a tenth is said', () => {
    const phones = (values: Cells) => {
      const { phone, otherPhones } = record(values).contact
      return [phone, ...otherPhones]
    }
    expect(phones({ phone: '555-010-4477 / 555-010-9911' })).toEqual(['555-010-4477', '555-010-9911'])
    expect(phones({ phone: '555-010-4477', otherPhone: '(555) 010 9911' })).toEqual(['555-010-4477', '(555) 010 9911'])
    expect(phones({ phone: '555-010-4477', otherPhone: '+1 555 010 4477' })).toEqual(['555-010-4477'])
    expect(phones({ phone: 'ask Bo', otherPhone: '555-010-9911' })).toEqual(['555-010-9911'])
    const three = { phone: '555-010-4477; 555-010-9911', otherPhone: '555-010-1234' }
    expect(phones(three)).toEqual(['555-010-4477', '555-010-9911', '555-010-1234'])
    const ten = Array.from({ length: 10 }, (_, i) => `555-010-100${i}`)
    const many = reading({ phone: ten[0], otherPhone: ten.slice(1).join('; ') })
    expect(many.ok && many.assumptions.map((one) => one.sentence)).toEqual([
      'Of the phone numbers, the first 9 were kept. Not kept: 555-010-1009.',
    ])
  })

  test('silence is no consent', () => expect(record({}).contact.consent).toEqual({ email: null, phone: null, text: null, letter: null }))
  test('an empty row is recognised', () => expect([isEmptyRow(['', ' ', 'n/a']), isEmptyRow(['', 'x'])]).toEqual([true, false]))
})

describe('when the present bed began', () => {
  test.each([
    [{ installed: '2009' }, '2009-01-01', 'installed-column'],
    [{ notes: 'installed 2009' }, '2009-01-01', 'notes-installed'],
    [{ installed: '2009', notes: 'rebed 2016, rebed 2021' }, '2021-01-01', 'notes-rebed'],
    [{ installed: '2020', notes: 'old softener rebed 2016' }, '2020-01-01', 'installed-column'],
    [{ installed: '2009', notes: 'rebed quoted 2019' }, '2009-01-01', 'installed-column'],
  ])('%j', (values, earliestDay, beganFrom) => expect(record(values).bed).toMatchObject({ began: { earliestDay }, beganFrom }))

  test('a visit before it does not count as seeing it', () => {
    expect(record({ installed: '2009', notes: 'rebed 2016', lastSeen: '2012-05-01' }).bed.lastSeen).toMatchObject({
      earliestDay: '2016-01-01',
      latestDay: '2016-12-31',
    })
  })
})

describe('the same customer, site and softener', () => {
  const keys = (values: Cells) => matchKeys(record(values))
  const base = { phone: '555-010-4477', street: '14 Orchard Ln', postcode: '12345', tank: '10x54' }

  test.each([
    [{ customerName: 'Poe, Al' }],
    [{ customerName: 'Mr. AL POE' }],
    [{ phone: '+1 (555) 010 4477' }],
    [{ street: 'Orchard Lane 14' }],
    [{ postcode: '12345-6789' }],
    [{ tank: '9x48', hardness: '22', notes: 'changed' }],
  ])('%j changes none of the keys', (change) => expect(keys({ ...base, ...change })).toEqual(keys(base)))

  test('another street is another site of the same customer', () => {
    const other = keys({ ...base, street: '9 Elm St' })
    expect(other.customerKey).toBe(keys(base).customerKey)
    expect(other.siteKey).not.toBe(keys(base).siteKey)
  })

  test('the same name with another phone is another customer', () => {
    expect(keys({ ...base, phone: '555-010-9999' }).customerKey).not.toBe(keys(base).customerKey)
  })

  test('the customer number outranks name and phone', () => {
    const one = keys({ ...base, referenceNumber: '7' })
    expect(keys({ ...base, referenceNumber: '7', customerName: 'Someone Else', phone: '' }).customerKey).toBe(one.customerKey)
    expect(keys({ ...base, referenceNumber: '8' }).customerKey).not.toBe(one.customerKey)
  })
})

describe('a mapping', () => {
  test('needs a name and one column for each field', () => {
    const columns = [
      { column: 0, field: 'phone' as const },
      { column: 1, field: 'phone' as const },
      { column: 2, field: null },
    ]
    expect(mappingProblems({ header: ['Tel', ''], columns })).toEqual([
      'Choose the column with the customer name.',
      '"Phone" is filled by Tel and Column B. Choose one of them.',
    ])
    expect(mappingProblems(mapping)).toEqual([])
  })

  test('columns count as in a spreadsheet', () => expect([0, 25, 26, 701, 702].map(columnLetters)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA']))
})
