import { describe, expect, test } from 'vitest'
import { choicesByHeading } from './earlier-choices.ts'
import { suggestColumns } from './suggest-columns.ts'

const TODAY = '2026-12-02'
/** What is suggested for a list, heading by heading, after the firm's choices for an earlier one. */
function after(earlier: Parameters<typeof choicesByHeading>[0], rows: string[][]) {
  return suggestColumns(rows, TODAY, choicesByHeading(earlier)).columns
}
const chosen = (header: string, choice: object) => ({ header, column: 7, field: null, ...choice })
const LIST = [
  ['Name', 'Unit', 'Hard.', 'Seen', 'Route'],
  ['Ann Poe', 'Purity 30', '18', '03/04/2021', 'R1'],
  ['Bo Dow', 'Purity 45', '22', '05/06/2022', 'R2'],
]

describe('choices for the columns of an earlier list', () => {
  test('stand for columns with the same heading, whatever their place, letters or blanks', () => {
    const columns = after([[chosen(' UNIT ', { field: 'softenerLabel' }), chosen('route', {})]], LIST)
    expect(columns[1]).toMatchObject({
      column: 1,
      field: 'softenerLabel',
      confidence: 'sure',
      ask: null,
      examples: ['Purity 30', 'Purity 45'],
    })
    expect(columns[4]).toMatchObject({ column: 4, field: null, confidence: 'sure', reason: expect.stringContaining('before') })
    expect(columns[0]).toEqual(suggestColumns(LIST, TODAY).columns[0])
  })

  test('answer what would be asked: a unit; without one it is asked all the same', () => {
    expect(after([[chosen('Hard.', { field: 'hardness', hardnessUnit: 'mg/L' })]], LIST)[2]).toMatchObject({
      hardnessUnit: 'mg/L',
      ask: null,
    })
    const asked = suggestColumns(LIST, TODAY).columns[2]?.ask
    expect(asked).toEqual(expect.any(String))
    expect(after([[chosen('Hard.', { field: 'hardness' })]], LIST)[2]?.ask).toBe(asked)
    // What a heading says goes before what was chosen.
    const said = [
      ['Name', 'Hard. (gpg)'],
      ['Ann Poe', '18'],
      ['Bo Dow', '22'],
    ]
    expect(after([[chosen('Hard. (gpg)', { field: 'hardness', hardnessUnit: 'mg/L' })]], said)[1]?.hardnessUnit).toBe('gpg')
  })

  test('say which comes first, day or month, only where the dates of this file do not', () => {
    const earlier = [[chosen('Seen', { field: 'lastSeen', dayOrder: 'day-first' })]]
    expect(after(earlier, LIST)[3]).toMatchObject({ field: 'lastSeen', dayOrder: 'day-first' })
    const told = [LIST[0] ?? [], ['Ann Poe', '', '18', '03/25/2021', ''], ['Bo Dow', '', '22', '11/30/2022', '']]
    expect(after(earlier, told)[3]).toMatchObject({ field: 'lastSeen', dayOrder: 'month-first' })
  })

  test('of the newest list count; a heading over two columns says nothing', () => {
    const lists = [[chosen('Unit', { field: 'tank' })], [chosen('Unit', { field: 'notes' })]]
    expect(after(lists, LIST)[1]?.field).toBe('tank')
    const twice = [
      ['Name', 'Unit', 'Unit'],
      ['Ann Poe', 'Purity 30', 'x'],
      ['Bo Dow', 'Purity 45', 'y'],
    ]
    expect(after(lists, twice)).toEqual(suggestColumns(twice, TODAY).columns)
  })

  test('take a field from another column that was suggested for it; notes are of many columns', () => {
    const rows = [
      ['Name', 'Kunde', 'Remarks'],
      ['Ann Poe', 'Poe Bakery', 'gate'],
      ['Bo Dow', 'Dow Mill', 'dog'],
    ]
    const columns = after([[chosen('Kunde', { field: 'customerName' })]], rows)
    expect(columns.map((one) => one.field)).toEqual([null, 'customerName', 'notes'])
    const notes = after([[chosen('Kunde', { field: 'notes' })]], rows)
    expect(notes.map((one) => one.field)).toEqual(['customerName', 'notes', 'notes'])
    expect(columns[0]?.reason).toContain('Another column fits')
  })
})
