import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { neutraliseFormula, restoreCell } from './neutralise.ts'
import { problemHeader, problemRows } from './problem-file.ts'

describe('formulas', () => {
  // The beginnings OWASP's note on CSV injection lists: = + - @, tab, carriage return, line feed, and the full-width signs.
  test.each([
    '=1+1',
    '=HYPERLINK("http://x")',
    '+44 1632 960123',
    '-2+3',
    '@SUM(A1)',
    '\t=1',
    '\r=1',
    '\n=1',
    ' =1+1',
    '＝1',
    '-3.5 gpg',
    '+3.5',
    "'=1",
    "''@x",
  ])('%j is disarmed and comes back', (cell) => {
    const safe = neutraliseFormula(cell)
    expect(safe).toBe(`'${cell}`)
    expect(restoreCell(safe)).toBe(cell)
  })

  test.each(['', 'Smith', '-3.5', '-3', '-3,5', '12 - 4', "O'Brien", "'quoted'", '10x54', 'a=b', "'tis"])('%j stays as it is', (cell) => {
    expect(neutraliseFormula(cell)).toBe(cell)
    expect(restoreCell(cell)).toBe(cell)
  })

  test('every text comes back, and nothing disarmed begins like a formula', () => {
    const nasty = fc.array(fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', '\n', ' ', '1', '.', 'a', '＝', ','), { maxLength: 8 })
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          nasty.map((parts) => parts.join('')),
        ),
        (cell) => {
          const safe = neutraliseFormula(cell)
          const isHarmless = !/^[=+\-@\t\r\n]/.test(safe) || /^-\d+([.,]\d+)?%?$/.test(safe)
          return isHarmless && restoreCell(safe) === cell
        },
      ),
      { numRuns: 20_000 },
    )
  })
})

describe('the file to fix', () => {
  const header = ['Name', 'Tank', 'Phone']
  const problems = [
    { kind: 'left-empty' as const, column: 'Tank', field: 'tank' as const, value: 'banana', reason: '"banana" is not understood.' },
    { kind: 'left-empty' as const, column: 'Phone', field: 'phone' as const, value: '=x', reason: 'Not a phone number.' },
  ]

  test('has the original cells, then line, column, value and reason, one line a row', () => {
    expect(problemRows(header, [{ line: 7, cells: ['=cmd', 'banana', '=x'], problems }])).toEqual([
      ['Name', 'Tank', 'Phone', ...problemHeader],
      ["'=cmd", 'banana', "'=x", '7', 'Tank | Phone', 'banana | =x', '"banana" is not understood. | Not a phone number.'],
    ])
  })

  test('mended twice, it carries its own columns only once', () => {
    const first = problemRows(header, [{ line: 7, cells: ['Al', 'banana', ''], problems: problems.slice(0, 1) }])
    const again = problemRows(first[0] ?? [], [{ line: 2, cells: first[1] ?? [], problems: problems.slice(0, 1) }])
    expect(again[0]).toEqual(['Name', 'Tank', 'Phone', ...problemHeader])
    expect(again[1]).toEqual(['Al', 'banana', '', '2', 'Tank', 'banana', '"banana" is not understood.'])
  })

  test('a row with more cells than the header keeps them', () => {
    expect(problemRows(['Name'], [{ line: 2, cells: ['Al', 'more'], problems }])[0]).toEqual(['Name', '', ...problemHeader])
  })

  test('a short row keeps its columns in place', () => {
    expect(problemRows(header, [{ line: 2, cells: ['Al'], problems: problems.slice(0, 1) }])[1]?.slice(0, 4)).toEqual(['Al', '', '', '2'])
  })
})
