import { describe, expect, it } from 'vitest'
import { printable } from './printable-text.ts'
import { textLines, textWidth } from './text-lines.ts'

describe('printable', () => {
  it('keeps what Windows-1252 holds: × ³ ½ ¼ ¾ ° ± — “ ” ’ and accented letters', () => {
    const text = '10 × 54 in, 1½ ft³, 52 °F ± ¼ — “Señor’s”'
    expect(printable(text)).toBe(text)
  })
  it('writes eighths as a rule is read', () => expect(printable('52⅛ in, ⅞ in')).toBe('52 1/8 in, 7/8 in'))
  it('takes off marks it has no letter for, and shows "?" where there is no likeness', () => {
    expect(printable('Łódź Dvořák')).toBe('Lódz Dvorák')
    expect(printable('水 12')).toBe('? 12')
    expect(printable('a\nb\u0007c')).toBe('a bc')
  })
})

describe('lines of text', () => {
  it('widths are those of the typeface: "Water" at 10 pt is 26.67 pt (Adobe metrics of Helvetica: W 944, a 556, t 278, e 556, r 333)', () =>
    expect(textWidth('Water', 10)).toBeCloseTo(26.67, 6))
  it('breaks at spaces', () => {
    expect(textLines('aaa aaa aaa', 10, 40)).toBe(2)
    expect(textLines('aaa', 10, 1)).toBe(1)
  })
})
