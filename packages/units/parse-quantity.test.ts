import { describe, expect, it } from 'vitest'
import { parseQuantity } from './parse-quantity.ts'

describe('quantities as people write them', () => {
  it.each([
    ['18 gpg', 18, 'gpg'],
    ['310 mg/L', 310, 'mg/L'],
    ['310ppm', 310, 'mg/L'],
    ['17.5 °dH', 17.5, 'dH'],
    ['2,5 mmol/L', 2.5, 'mmol/L'],
    ['1.5 ft3', 1.5, 'ft3'],
    ['1½ cu ft', 1.5, 'ft3'],
    ['1 1/2 ft³', 1.5, 'ft3'],
    ['3/4 ft3', 0.75, 'ft3'],
    ['42 L', 42, 'L'],
    ['48,000 grain', 48_000, 'grain'],
    ['48 000 grains', 48_000, 'grain'],
    ['1,234,567.5 grain', 1_234_567.5, 'grain'],
    ['1.234.567 grain', 1_234_567, 'grain'],
    ['48K', 48_000, 'grain'],
    ['48k grain', 48_000, 'grain'],
    ['54"', 54, 'in'],
    ['0,125 in', 0.125, 'in'],
    ['-4 °F', -4, 'F'],
    ['2.4 GPM', 2.4, 'gpm'],
  ])('%s', (text, value, unit) => expect(parseQuantity(text)).toMatchObject({ ok: true, value, unit }))

  it('takes a bare number only where the caller names the unit', () => {
    expect(parseQuantity('18').ok).toBe(false)
    expect(parseQuantity('18', { defaultUnit: 'gpg' })).toMatchObject({ ok: true, value: 18, unit: 'gpg' })
  })
  it.each([
    ['', /Nothing is written/],
    ['soft', /does not begin with a number/],
    ['18 bananas', /unit "bananas"/],
    ['10x54', /unit "x54"/],
    ['-4 gpg', /below zero/],
    ['3/0 ft3', /./],
  ])('refuses "%s" in a sentence', (text, reason) =>
    expect(parseQuantity(text)).toMatchObject({ ok: false, reason: expect.stringMatching(reason) }),
  )
  it('refuses another kind than the caller can use', () => {
    expect(parseQuantity('42 L', { kinds: ['hardness'] })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('is a volume, but a hardness'),
    })
  })
})
