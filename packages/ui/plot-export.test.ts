import { describe, expect, it } from 'vitest'
import { csvOf, fileStem } from './plot-export.tsx'

describe('taking a plot’s figures away', () => {
  it('writes them as RFC 4180 asks: CRLF, quotes doubled, fields with commas quoted', () => {
    expect(
      csvOf({
        heads: ['Month', 'Expected'],
        rows: [
          ['Jan, 2027', '1,204'],
          ['the "first"', '3'],
        ],
      }),
    ).toBe('\uFEFFMonth,Expected\r\n"Jan, 2027","1,204"\r\n"the ""first""",3\r\n')
  })
  it('names the file after the plot', () => {
    expect(fileStem('Beds expected to fail, by month')).toBe('beds-expected-to-fail-by-month')
    expect(fileStem('…')).toBe('plot')
  })
})
