import { describe, expect, test } from 'vitest'
import { plainMarks, textLength } from './text-length.ts'

const a = (count: number) => 'a'.repeat(count)

// 3GPP TS 23.038 (6.2.1, 6.2.1.1) and TS 23.040 (9.2.3.24.1): 160 letters of seven bits fit 140 octets, 153 beside a head; 70 and 67 of sixteen bits.
describe('a text', () => {
  test.each([
    ['', 1, null],
    [a(160), 1, null],
    [a(161), 2, null],
    [a(306), 2, null],
    [a(307), 3, null],
    [`${a(158)}€`, 1, null], // the euro takes two units
    [`${a(159)}€`, 2, null],
    // 152 + 2 would part the euro: it goes whole into the second part, which then holds 153, and one is left over
    [`${a(152)}€${a(151)}`, 2, null],
    [`${a(152)}€${a(152)}`, 3, null],
    ['¿Qué? Ñandú', 1, 'ú'],
    [`ú${a(69)}`, 1, 'ú'],
    [`ú${a(70)}`, 2, 'ú'],
    [`ú${a(133)}`, 2, 'ú'],
    [`ú${a(134)}`, 3, 'ú'],
    ['💧'.repeat(35), 1, '💧'], // two units of sixteen bits each
    ['💧'.repeat(36), 2, '💧'],
    ['💧'.repeat(66), 2, '💧'], // 33 to a part of 67: none is parted
    ['💧'.repeat(67), 3, '💧'],
  ])('%j goes out as %i', (text, parts, wide) => {
    expect(textLength(text)).toEqual({ characters: [...text].length, parts, wide })
  })

  test('keeps to the short alphabet where its marks can be plain', () => {
    const plain = plainMarks('We’ll call – “soon”…')
    expect(plain).toBe('We\'ll call - "soon"...')
    expect(textLength(plain).wide).toBeNull()
  })
})
