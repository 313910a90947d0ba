import { describe, expect, test } from 'vitest'
import { CHANCE_PARTS, packMonths, STORED_LENGTH, STORED_MONTHS } from './bed-months.ts'

describe('chances as they are stored', () => {
  const level = (chance: number) => new Float64Array(STORED_LENGTH).fill(chance)

  test('keep each chance to a part in 65,535', () => {
    const packed = packMonths(level(0.01), STORED_MONTHS)
    expect(packed?.[0]).toBe(Math.round(0.01 * CHANCE_PARTS))
    expect(packed).toHaveLength(STORED_LENGTH)
  })

  test.each([
    ['above 1, which two bytes would wrap to 0.37', 1.37],
    ['below 0', -0.001],
    ['no number', Number.NaN],
  ])('are not kept where one is %s', (_what, chance) => {
    const chances = level(0.001)
    chances[7] = chance
    expect(packMonths(chances, STORED_MONTHS)).toBeNull()
  })

  test('are not kept where the months of a parameter set add up to more than 1', () => {
    expect(packMonths(level(1 / STORED_MONTHS + 1e-6), STORED_MONTHS)).toBeNull()
    expect(packMonths(level(1 / STORED_MONTHS), STORED_MONTHS)).not.toBeNull()
  })
})
