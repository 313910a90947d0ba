import { describe, expect, it } from 'vitest'
import { TANK } from '../../../tests/support/speaking.ts'
import { USUAL_FIGURES } from '../firm/usual-figures.ts'
import { checkClues } from './check-clues.ts'
import type { TankClues } from './clue-types.ts'
import { identifyTank } from './identify-tank.ts'

const identify = (clues: TankClues, figures = USUAL_FIGURES) => {
  const found = identifyTank({ clues, figures, ...TANK })
  if (!found.ok) throw new Error(found.reason)
  return found.value
}
const ids = (clues: TankClues) => identify(clues).candidates.map((one) => one.id)

// Read over by a practitioner; common practice, no source. 10 × 54: π·10 = 31.4 in around; in centimetres 79.8 around and 137.2 high.
describe('a tape read wrongly in a way that looks sound', () => {
  it.each([
    [
      'around and height swapped',
      { circumferenceIn: 54, heightIn: 31.5 },
      /No usual tank is 17 × 32 in, but 10 × 54 in is one: did you swap/,
    ],
    ['across and height swapped', { diameterIn: 54, heightIn: 10 }, /10 × 54 in is one: did you swap/],
    ['centimetres typed as inches', { circumferenceIn: 81, heightIn: 137 }, /read as centimeters it is 10 × 54 in\. Was the tape metric\?/],
  ])('%s is suspected, and nothing is ordered by it', (_, clues, sentence) => {
    const found = identify(clues)
    expect(found.slip).toMatch(sentence)
    expect(found.settled).toBe(false)
    expect(found.odd[0]).toEqual({ clue: 'heightIn', sentence: found.slip })
  })
  it.each([
    [{ circumferenceIn: 31.4, heightIn: 54 }],
    [{ circumferenceIn: 33.8, heightIn: 54 }],
    [{ circumferenceIn: 31.4 }],
    [{ diameterIn: 26, heightIn: 60 }],
  ])('%j hints at none', (clues) => expect(identify(clues).slip).toBeNull())
})

describe('ranking', () => {
  it('leaves both lengths of a 10 in tank open after the circumference alone, and asks for a height', () => {
    const found = identify({ circumferenceIn: 31.4 })
    expect(new Set(found.candidates.slice(0, 2).map((one) => one.id))).toEqual(new Set(['10x44', '10x54']))
    expect(found.settled).toBe(false)
    expect(found.next[0]?.id).toMatch(/^height/)
    expect(found.kitsDiffer).toBe(true)
  })
  it('is settled by a height taken with the valve on', () => {
    const found = identify({ circumferenceIn: 31.4, heightWithValveIn: 61 })
    expect(found.candidates[0]?.id).toBe('10x54')
    expect(found.settled).toBe(true)
    expect(found.next).toEqual([])
  })
  it('asks for the circumference first where nothing is known: it tells more than any one height', () => {
    const found = identify({})
    expect(found.next[0]?.id).toBe('circumferenceIn')
    expect(found.candidates.length).toBeGreaterThan(5)
  })
  it('takes a jacket off the tape: 33.8 in round is 10¾ in across, a 10 in tank in its sleeve', () => {
    const bare = identify({ circumferenceIn: 33.8, heightIn: 54, jacket: false })
    const sleeved = identify({ circumferenceIn: 33.8, heightIn: 54, jacket: true })
    expect(sleeved.candidates[0]).toMatchObject({ id: '10x54' })
    expect(sleeved.candidates[0]?.chance ?? 0).toBeGreaterThan(bare.candidates.find((one) => one.id === '10x54')?.chance ?? 0)
  })
  it('reads the rating on the label by 32,000 grains a cubic foot (common practice)', () => {
    expect(ids({ nominalGrains: 48_000 })[0]).toBe('10x54')
    expect(ids({ nominalGrains: 64_000 })[0]).toBe('12x52')
    expect(ids({ nominalGrains: 32_000, circumferenceIn: 28.3 })[0]).toBe('9x48')
  })
  it('tells 14×65 from 13×54 by the opening seen with the valve off, where nothing else is known', () => {
    expect(identify({ openingIn: 4 }).candidates.map((one) => one.id)).not.toContain('13x54')
  })
})

describe('an unlisted size', () => {
  it('is worked out from its measures, with a kit', () => {
    const best = identify({ circumferenceIn: 34.6, heightIn: 50, jacket: false }).candidates[0]
    expect(best).toMatchObject({ id: 'unlisted', listed: false, diameterIn: 11, heightIn: 50 })
    // 0.61 of 0.92 × π/4 × 11² × 50 / 1728 = 1.54 ft³, down to a quarter.
    expect(best?.kit?.resinFt3).toBe(1.5)
  })
  it('has no size and no kit while it is not measured', () => {
    const found = identify({}).candidates.find((one) => one.id === 'unlisted')
    expect(found).toMatchObject({ diameterIn: null, heightIn: null, kit: null })
    expect(found?.kitReason).toMatch(/circumference and height/)
  })
  it('is a row like any other once the firm lists it', () => {
    const [first] = USUAL_FIGURES.tanks
    if (!first) throw new Error('no rows')
    const own = { ...first, diameterIn: 11, heightIn: 50, resinFt3: { min: 1.5, usual: 1.5, max: 1.5 } }
    const found = identify({ circumferenceIn: 34.6, heightIn: 50 }, { ...USUAL_FIGURES, tanks: [...USUAL_FIGURES.tanks, own] })
    expect(found.candidates[0]).toMatchObject({ id: '11x50', listed: true })
  })
})

describe('clues that cannot be right', () => {
  it('are named with a sentence and left out, and the rest still counts', () => {
    const found = identify({ circumferenceIn: 31.4, heightIn: 1e9, diameterIn: Number.NaN })
    expect(found.usedClues).toEqual(['circumferenceIn'])
    expect(found.problems.map((one) => one.clue)).toEqual(['diameterIn', 'heightIn'])
    for (const { sentence } of found.problems) expect(sentence).toMatch(/left out.+\.$/)
  })
  it('are named where they do not go with the rest, with what would', () => {
    const { odd, candidates } = identify({ writtenDiameterIn: 10, writtenHeightIn: 54, heightIn: 62 })
    expect(candidates[0]?.id).toBe('10x54')
    expect(odd.map((one) => one.sentence)).toEqual([
      'Height to the rim: 62 in does not go with a 10 × 54 in tank, which would give about 54 in. Check it.',
    ])
  })
  it('a valve below the rim is refused by itself', () => {
    expect(checkClues({ heightIn: 54, heightWithValveIn: 50 }, TANK)).toMatchObject({
      clues: { heightIn: 54 },
      problems: [{ clue: 'heightWithValveIn' }],
    })
  })
  it('an empty table is refused', () => {
    expect(identifyTank({ clues: {}, figures: { ...USUAL_FIGURES, tanks: [] }, ...TANK })).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/empty/),
    })
  })
})

describe('what it changes in the kit', () => {
  it('gives each candidate resin, bags, gravel and crew by the firm’s table', () => {
    const found = identify({ circumferenceIn: 31.4 })
    const kit = (id: string) => found.candidates.find((one) => one.id === id)?.kit
    expect(kit('10x54')).toMatchObject({ resinFt3: 1.5, bags: '1 × 1 ft³ bag and 1 × ½ ft³ part bag', gravelLb: 18, crewSize: 2 })
    expect(kit('10x44')).toMatchObject({ resinFt3: 1.25 })
  })
  it('lets the label outrank the table', () => {
    const found = identify({ writtenDiameterIn: 10, writtenHeightIn: 44, nominalGrains: 32_000 })
    expect(found.candidates[0]).toMatchObject({ id: '10x44', kit: { resinFt3: 1 } })
  })
})
