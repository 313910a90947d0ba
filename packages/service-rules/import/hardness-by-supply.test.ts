import { describe, expect, test } from 'vitest'
import { hardnessBySupply } from './hardness-by-supply.ts'
import type { ColumnMapping } from './import-types.ts'
import { readRow } from './read-row.ts'
import { suggestColumns } from './suggest-columns.ts'

const MAPPING: ColumnMapping = {
  header: ['Name', 'Hardness', 'Supply'],
  columns: [
    { column: 0, field: 'customerName' },
    { column: 1, field: 'hardness', hardnessUnit: 'each-by-size' },
    { column: 2, field: 'supplyName' },
  ],
}
/**
 * Soft water at Lark (about 40 mg/L, 2.3 gpg), hard water at Quill (about 310 mg/L, 18 gpg), and a town nothing is known of. By hand, 1 gpg being 17.118 mg/L: 38 mg/L is
 * 2.22 gpg, 45 mg/L is 2.63 gpg; a bare 42 at Lark is 2.45 gpg as mg/L and 18 times off as grains; a bare 19 at Quill is right as grains.
 */
const LIST = [
  ['Ann', '38 ppm', 'Lark'],
  ['Bo', '45 mg/L', 'LARK'],
  ['Cy', '40 mg/L', 'Lark'],
  ['Di', '42', 'Lark'],
  ['Ed', '310', 'Quill'],
  ['Flo', '18 gpg', 'Quill'],
  ['Gus', '19', 'Quill'],
  ['Hal', '42', 'Rowan'],
  ['Ida', '35 mg/L', 'well'],
  ['Jo', '33 mg/L', 'well'],
  ['Kit', '34', 'well'],
]

const OPTIONS = { today: '2026-12-02', display: { locale: 'en-US' } as const, hardnessBySupply: hardnessBySupply(LIST, MAPPING) }
const readOf = (name: string) => {
  const reading = readRow(LIST.find((row) => row[0] === name) ?? [], MAPPING, OPTIONS)
  return reading.ok ? { ...reading.record.water.hardness, said: reading.assumptions.map((one) => one.sentence) } : expect.unreachable()
}

describe('a number without a unit', () => {
  test('is in the unit that fits what other rows say of its supply, and the row says so', () => {
    expect(readOf('Di')).toMatchObject({
      enteredUnit: 'mg/L',
      hardnessGpg: expect.closeTo(2.4536, 3),
      said: ['"42" has no unit and was read as mg/L, as 3 other rows give this supply about 2.3 gpg.'],
    })
    expect(readOf('Gus')).toMatchObject({
      enteredUnit: 'gpg',
      hardnessGpg: 19,
      said: ['"19" has no unit and was read as grains per gallon, as 2 other rows give this supply about 18 gpg.'],
    })
  })

  test('goes by its size where no supply is known, and where homes have wells of their own', () => {
    for (const [name, value] of [
      ['Hal', 42],
      ['Kit', 34],
    ] as const)
      expect(readOf(name)).toMatchObject({
        hardnessGpg: value,
        said: [`"${value}" has no unit and was read as grains per gallon, which fits its size.`],
      })
  })

  test('is in the unit somebody chose for the whole column, whatever its supply', () => {
    const chosen = {
      ...MAPPING,
      columns: MAPPING.columns.map((one) => (one.column === 1 ? { ...one, hardnessUnit: 'gpg' as const } : one)),
    }
    expect(hardnessBySupply(LIST, chosen)).toEqual({})
  })

  test('of a supply whose rows contradict each other, or of which one row alone speaks, says nothing', () => {
    const rows = [
      ['A', '40 mg/L', 'Lark'],
      ['B', '300 mg/L', 'Lark'],
      ['C', '40 mg/L', 'Quill'],
    ]
    expect(hardnessBySupply(rows, MAPPING)).toEqual({})
  })
})

test('the question for a column of numbers without units names the groups by supply', () => {
  const { columns } = suggestColumns([['Name', 'Hardness', 'Water supply'], ...LIST], '2026-12-02')
  expect(columns[1]).toMatchObject({ field: 'hardness', hardnessUnit: 'each-by-size' })
  expect(columns[1]?.ask).toBe(
    'Of the numbers without a unit, 1 on Lark look like mg/L, 1 on Quill look like grains per gallon, as other rows there say. The rest are read as what fits their size. Is that right?',
  )
})
