import { describe, expect, test } from 'vitest'
import type { ImportField } from './fields.ts'
import { leftOutColumns, missingColumns } from './key-columns.ts'
import { suggestColumns } from './suggest-columns.ts'

const mapping = (...fields: (ImportField | null)[]) => ({
  header: fields.map((field, column) => field ?? `Extra ${column}`),
  columns: fields.map((field, column) => ({ column, field })),
})
const keys = (...fields: (ImportField | null)[]) => missingColumns(mapping(...fields)).map((one) => one.key)

describe('what no chosen column tells', () => {
  test('of a list of names alone: all of it, the date first', () => {
    expect(keys('customerName')).toEqual(['began', 'tank', 'reach', 'street', 'water'])
  })
  test('either of two columns is enough', () => {
    expect(keys('customerName', 'bedBegan', 'resinVolume', 'email', 'street', 'supplyName')).toEqual([])
    expect(keys('customerName', 'installed', 'tank', 'phone', 'street', 'hardness')).toEqual([])
  })
  test('dates in the notes are still read, and the sentence says so', () => {
    expect(missingColumns(mapping('customerName'))[0]?.sentence).toContain('every date will be unknown')
    expect(missingColumns(mapping('customerName', 'notes'))[0]?.sentence).toContain('only dates in the notes')
  })
  test('columns left out are named as the firm names them; one without a heading is not', () => {
    const some = mapping('customerName', null, null)
    some.header[2] = ''
    expect(leftOutColumns(some)).toEqual(['Extra 1'])
  })
})

describe('a heading that means something else', () => {
  const rows = (heading: string, cells: string[]) => [
    ['Name', heading],
    ...cells.map((cell, index) => [`Person ${'ABCDEFG'[index]}`, cell]),
  ]
  const field = (heading: string, cells: string[]) => suggestColumns(rows(heading, cells), '2026-05-04').columns[1]

  test('"Softener" over tank sizes holds tanks', () => {
    const column = field('Softener', ['10x54', '12 x 52', '10x54', '9x48', 'twin 14x65'])
    expect(column?.field).toBe('tank')
    expect(column?.reason).toBe('The header says "Softener", but the contents look like tank.')
  })
  test('"Softener" over model names holds models', () => {
    expect(field('Softener', ['Bluefin 30', 'Bluefin 48', 'Calder M', 'Calder L', 'old one'])?.field).toBe('softenerLabel')
  })
  test('"Contact" over phone numbers holds phones', () => {
    expect(field('Contact', ['+1 555 201 3344', '(555) 201-9921', '555-201-7780', '(555) 201-0042', '555-201-1111'])?.field).toBe('phone')
  })
})
