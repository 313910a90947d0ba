import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const css = readFileSync(new URL('./theme.css', import.meta.url), 'utf8')

/** Reads `--name: light-dark(#light, #dark)` pairs of one block. */
function pairs(selector: string): Map<string, [string, string]> {
  const block = css.slice(css.indexOf(`\n${selector} {`), css.indexOf('\n}', css.indexOf(`\n${selector} {`)))
  return new Map(
    [...block.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((m) => [m[1] ?? '', [m[2] ?? '', m[3] ?? '']]),
  )
}

/** Relative luminance and contrast ratio as WCAG 2.2 defines them (glossary, "relative luminance" and "contrast ratio"). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((i) => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}
function contrast(a: string, b: string): number {
  const [x, y] = [luminance(a), luminance(b)]
  return (Math.max(x, y) + 0.05) / (Math.min(x, y) + 0.05)
}

const office = pairs(':root')
const field = new Map([...office, ...pairs('.field')])
const colour = (theme: Map<string, [string, string]>, name: string, mode: 0 | 1) => {
  const pair = theme.get(name)
  if (!pair) throw new Error(`theme.css has no colour --${name}`)
  return pair[mode]
}
const modes = [
  ['light', 0],
  ['dark', 1],
] as const
const texts = ['ink', 'soft', 'water', 'bead-ink', 'done', 'danger']
const grounds = ['paper', 'sheet', 'wash']

describe('the contrast function itself', () => {
  it('agrees with the ratio of black on white that WCAG states', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21)
  })
})

describe.each(modes)('contrast in %s', (_, mode) => {
  it.each(texts.flatMap((t) => grounds.map((g) => [t, g] as const)))('%s on %s: 4.5 in the office, 7 on the tablet', (text, ground) => {
    expect(contrast(colour(office, text, mode), colour(office, ground, mode))).toBeGreaterThanOrEqual(4.5)
    expect(contrast(colour(field, text, mode), colour(field, ground, mode))).toBeGreaterThanOrEqual(7)
  })

  it.each(['edge', 'bead', 'gravel', 'water', 'done'])('%s, a mark or frame, stands out 3:1 from paper', (mark) => {
    expect(contrast(colour(office, mark, mode), colour(office, 'paper', mode))).toBeGreaterThanOrEqual(3)
    expect(contrast(colour(field, mark, mode), colour(field, 'paper', mode))).toBeGreaterThanOrEqual(3)
  })
})
