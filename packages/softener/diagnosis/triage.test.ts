import { diagnosisCautions } from '@almanac/words/en/diagnosis-cautions'
import { emergency } from '@almanac/words/en/emergency'
import { describe, expect, it } from 'vitest'
import { DIAGNOSIS } from '../../../tests/support/speaking.ts'
import { CAUSES } from './causes.ts'
import { CHECKS } from './checks.ts'
import { type TriageInput, triage } from './triage.ts'

type Told = Omit<TriageInput, keyof typeof DIAGNOSIS>
const find = (told: Told) => triage({ ...told, ...DIAGNOSIS }).value
const chance = (input: Told, id: string) => find(input).causes.find((one) => one.cause.id === id)?.chance ?? Number.NaN

describe('ranking', () => {
  it('starts from the shares of complaints and asks for beads first', () => {
    const found = find({ answers: {} })
    expect(found.next?.check.id).toBe('beads')
    expect(found.advice).toBeNull()
    expect(found.causes.map((one) => one.chance)).toEqual(found.causes.map((one) => one.priorChance))
  })
  it('follows salt that stays and brine that stands high to the injector', () => {
    const found = find({ answers: { beads: 'no', 'tap-water': 'hard', salt: 'none', brine: 'high', clock: 'right' } })
    expect(found.causes[0]?.cause.id).toBe('injector-brine')
    expect(found.advice).toMatchObject({ action: 'repair', urgency: 'now', jobKind: 'repair' })
  })
  it('follows a dark display to the timer', () => {
    expect(find({ answers: { beads: 'no', salt: 'none', clock: 'wrong', 'draws-brine': 'yes' } }).causes[0]?.cause.id).toBe('meter-timer')
  })
  it('follows soft water at the outlet and hard at the tap to the bypass', () => {
    const found = find({ answers: { beads: 'no' }, measured: { outletGpg: 0.5, tapGpg: 15 } })
    expect(found.causes[0]?.cause.id).toBe('bypass')
    expect(found.advice?.sentences[0]).toMatch(/Put the softener in service/)
  })
  it('follows hard water though salt is used, mushy beads and pressure lost in service to the bed', () => {
    const found = find({
      answers: { beads: 'no', 'tap-water': 'at-times', salt: 'usual', pressure: 'service', 'bead-feel': 'mushy' },
      measured: { capacityShare: 0.55 },
    })
    expect(found.causes[0]?.cause.id).toBe('worn-bed')
    expect(found.advice).toMatchObject({ action: 'rebed', urgency: 'now', jobKind: 'rebed' })
  })
  it('sends nobody to rebed firm rusty beads: they are cleaned, and the gas is warned of', () => {
    const found = find({ answers: { beads: 'no', iron: 'stains', 'bead-feel': 'rusty', 'tap-water': 'at-times' } })
    expect(found.advice).toMatchObject({ action: 'clean', jobKind: 'cleaning' })
    expect(found.advice?.cautions).toEqual([{ kind: 'chemical', says: 'rinse-between' }])
  })
  it('finds an undersized unit, a changed water and no fault', () => {
    expect(find({ answers: { beads: 'no', change: 'people', salt: 'more', capacity: 'full' } }).causes[0]?.cause.id).toBe('undersized')
    expect(find({ answers: { beads: 'no', change: 'water', salt: 'usual' } }).causes[0]?.cause.id).toBe('water-changed')
    const fine = find({ answers: { beads: 'no', 'tap-water': 'soft', salt: 'usual', outlet: 'both-soft', capacity: 'full' } })
    expect(fine.causes[0]?.cause.id).toBe('no-fault')
    expect(fine.advice).toMatchObject({ action: 'nothing', jobKind: null })
  })
})

// Read over by a practitioner; common practice, no source.
describe('what practice asks of it', () => {
  const found = (told: Told) => find({ ...told, answers: { beads: 'no', ...told.answers } })
  it('hardness programmed too low is found by asking what is programmed, and is no "no fault"', () => {
    const asked = found({ answers: { bypass: 'service', clock: 'right', 'draws-brine': 'yes', settings: 'low', change: 'none' } })
    expect(asked.causes[0]?.cause.id).toBe('mis-set')
    expect(asked.causes.find((one) => one.cause.id === 'no-fault')?.chance).toBeLessThan(0.15)
    expect(asked.advice).toMatchObject({ action: 'repair', jobKind: 'repair' })
  })
  it.each([
    ['overfull', ['injector-brine', 'valve-seals']],
    ['salty', ['injector-brine', 'valve-seals']],
    ['leak', ['valve-seals']],
    ['drain', ['valve-seals']],
    ['error', ['meter-timer']],
  ])('%s is no "no fault"', (signs, causes) => {
    const asked = found({ answers: { signs, 'tap-water': 'soft' } })
    expect(causes).toContain(asked.causes.find((one) => one.cause.id !== 'worn-bed')?.cause.id)
    expect(asked.causes.find((one) => one.cause.id === 'no-fault')?.chance).toBeLessThan(0.37)
    expect(asked.advice?.action).not.toBe('nothing')
  })
  it('a soft outlet with a hard tap clears a bed of twelve years', () => {
    const asked = found({ answers: { outlet: 'tap-hard' }, bed: { ageYears: 12 } })
    expect(asked.causes[0]?.cause.id).toBe('bypass')
    expect(asked.causes.find((one) => one.cause.id === 'worn-bed')?.chance).toBeLessThan(0.2)
  })
  it('a test of capacity takes days: it is never the next check while another tells something', () => {
    const capacity = CHECKS.find((one) => one.id === 'capacity')
    expect(capacity?.days).toBeGreaterThanOrEqual(2)
    for (const bed of [null, { ageYears: 4 }, { ageYears: 14 }]) expect(found({ answers: {}, bed }).next?.check.id).not.toBe('capacity')
  })
})

describe('the bed’s record before any check', () => {
  it('is the forecast’s chance, and the rest share what is left', () => {
    expect(chance({ answers: {}, bed: { chanceFailed: 0.6 } }, 'worn-bed')).toBeCloseTo(0.6, 10)
    // 0.2 of complaints, of which the bed's 0.16 is given up: 0.2 × 0.4 / 0.84.
    expect(chance({ answers: {}, bed: { chanceFailed: 0.6 } }, 'injector-brine')).toBeCloseTo(0.095238, 6)
  })
  it('never rules anything out', () => {
    expect(chance({ answers: {}, bed: { chanceFailed: 1 } }, 'worn-bed')).toBeCloseTo(0.85, 10)
    expect(chance({ answers: {}, bed: { chanceFailed: 0 } }, 'worn-bed')).toBeCloseTo(0.02, 10)
  })
  it('is the age where there is no forecast', () => {
    // 1 − exp(−(13/13)³) = 0.632
    expect(chance({ answers: {}, bed: { ageYears: 13 } }, 'worn-bed')).toBeCloseTo(0.632, 3)
    expect(find({ answers: {}, bed: { ageYears: -3 } }).priorBasis).toBe('usual')
  })
})

describe('a check that cannot be made', () => {
  it('is passed over, and the next one is asked for', () => {
    const found = find({ answers: {}, skipped: ['beads'] })
    expect(found.next?.check.id).toBe(found.checks[1]?.check.id)
    expect(find({ answers: {}, skipped: CHECKS.map((one) => one.id) }).next).toBeNull()
  })
})

describe('an emergency', () => {
  it('goes first whatever else was answered', () => {
    const found = find({ answers: { beads: 'yes', 'tap-water': 'soft', salt: 'none', brine: 'high', 'bead-feel': 'firm' } })
    const told = (keys: readonly (keyof typeof emergency)[] = []) => keys.map((key) => emergency[key])
    expect(told(found.emergency?.sayNow)[0]).toMatch(/bypass/)
    expect(told(found.emergency?.sayNow).join(' ')).toMatch(/hot water.+washing machine/)
    expect(told(found.emergency?.onSite).join(' ')).toMatch(/flush from the main.+screens.+ice-maker.+heater/i)
    expect(found.advice).toMatchObject({ action: 'rebed', urgency: 'today', jobKind: 'emergency' })
    expect(found.next).toBeNull()
  })
  it('is none without beads', () => expect(find({ answers: { beads: 'no' } }).emergency).toBeNull())
})

describe('cautions stand at the check they belong to', () => {
  const text = (id: string) =>
    (CHECKS.find((one) => one.id === id)?.cautions ?? []).map((one) => `${one.kind}: ${diagnosisCautions[one.says]}`)
  it('pressure before power before the valve comes off', () => {
    const [first = '', second = ''] = text('bead-feel')
    expect(first).toMatch(/^pressure:.+backwash until the drain stops/)
    expect(second).toMatch(/^electricity: Unplug only after the pressure is gone/)
  })
  it('bleach and iron cleaner', () => expect(text('iron').join()).toMatch(/Never mix bleach with iron cleaner/))
  it('80 psi and a regulator', () => expect(text('pressure').join()).toMatch(/80 psi/))
})

describe('what cannot be', () => {
  it('is named and left out', () => {
    const { problems, answered } = find({ answers: { beads: 'purple' }, measured: { capacityShare: Number.NaN, tapGpg: -1 } })
    expect(problems).toHaveLength(3)
    for (const sentence of problems) expect(sentence).toMatch(/left out.*\.$/)
    expect(answered).toBe(0)
  })
})

describe('why', () => {
  it('prior times every factor is the chance', () => {
    const found = find({ answers: { beads: 'no', salt: 'none', brine: 'high', iron: 'none' }, measured: { outletGpg: 9, tapGpg: 9 } })
    for (const { priorChance, contributions, chance: after } of found.causes) {
      expect(contributions).toHaveLength(5)
      expect(contributions.reduce((product, one) => product * one.factor, priorChance)).toBeCloseTo(after, 10)
    }
    expect(found.causes[0]?.contributions[0]?.words).toMatch(/points to it, × \d/)
  })
  it('every cause and every check says where its figures are from', () => {
    for (const { source } of [...CAUSES, ...CHECKS]) expect(DIAGNOSIS.words(source)).toMatch(/common practice, no source|from memory/)
    for (const { id } of CHECKS) expect(DIAGNOSIS.words(`check/${id}/why`)).toMatch(/\.$/)
  })
})
