import { describe, expect, test } from 'vitest'
import { readConcentration } from './read-concentration.ts'
import { readDisinfectant } from './read-disinfectant.ts'
import { readHardness } from './read-hardness.ts'
import { readFraction, readPlainNumber } from './read-number.ts'
import { readResinKind, readResinVolume } from './read-resin.ts'

describe('numbers', () => {
  test.each([
    ['18', 18],
    ['18.5', 18.5],
    ['0,8', 0.8],
    [',5', 0.5],
    ['.5', 0.5],
    ['1,234', 1234],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1 234', 1234],
    ["1'234", 1234],
    ['-3.5', -3.5],
    ['', null],
    ['1.2.3', null],
    ['12a', null],
    ['1e5', null],
    ['Infinity', null],
    ['--1', null],
  ])('%j is %j', (text, value) => expect(readPlainNumber(text)).toBe(value))

  test.each([
    ['1½', 1.5],
    ['1 1/2', 1.5],
    ['1-1/2', 1.5],
    ['¾', 0.75],
    ['3/4', 0.75],
    ['1/0', null],
  ])('the fraction %j is %j', (text, value) => expect(readFraction(text)).toBe(value))
})

describe('hardness', () => {
  // 1 gpg = 64.79891 mg / 3.785411784 L = 17.1181 mg/L as CaCO3 and 0.959 °dH, from exact definitions.
  test.each([
    ['18 gpg', 18],
    ['18gpg', 18],
    ['18 grains', 18],
    ['18 gr/gal', 18],
    ['~18 gpg', 18],
    ['18-20 gpg', 19],
    ['171.181 mg/L', 10],
    ['171.181 ppm', 10],
    ['171.181 mg/l as CaCO3', 10],
    ['9.59 °dH', 10],
    ['9.59 dH', 10],
    ['17.12 °fH', 10],
    ['0 gpg', 0],
  ])('%j is %f gpg', (text, gpg) => {
    const reading = readHardness(text, null)
    expect(reading.ok && reading.value.hardnessGpg).toBeCloseTo(gpg, 2)
  })

  test('a bare number takes the unit of its column and is refused without one', () => {
    // 320 mg/L as CaCO3 / 17.118 (WQA glossary: 1 gpg = 17.1 mg/L) = 18.69 gpg.
    expect(readHardness('320', 'each-by-size')).toMatchObject({
      ...{ ok: true, value: { enteredUnit: 'mg/L', hardnessGpg: expect.closeTo(18.69, 2) } },
      assumptions: [expect.stringMatching(/read as mg\/L/)],
    })
    expect(readHardness('19', 'each-by-size')).toMatchObject({
      ...{ ok: true, value: { enteredUnit: 'gpg', hardnessGpg: 19 } },
      assumptions: [expect.stringMatching(/read as grains/)],
    })
    expect(readHardness('19 ppm', 'each-by-size')).toMatchObject({ value: { enteredUnit: 'mg/L' }, assumptions: [] })
    expect(readHardness('18', 'gpg')).toMatchObject({ ok: true, value: { hardnessGpg: 18, enteredUnit: 'gpg', enteredValue: 18 } })
    expect(readHardness('18', null)).toEqual({
      ok: false,
      reason: '"18" has no unit. Choose the unit for this column, or type it beside the number, such as 18 gpg.',
    })
  })

  test('a written unit outranks the column', () =>
    expect(readHardness('310 mg/L', 'gpg')).toMatchObject({ value: { enteredUnit: 'mg/L' } }))

  test.each(['very hard', '310 gpg', '18 furlongs', '-5 gpg', '20-18 gpg', '', '1e3 gpg', 'NaN'])('%j is refused', (text) =>
    expect(readHardness(text, 'mg/L').ok).toBe(false),
  )
})

describe('iron and chlorine', () => {
  test.each([
    ['0.3 mg/L', 0.3, false],
    ['300 µg/L', 0.3, false],
    ['300 ppb', 0.3, false],
    ['0,3 ppm', 0.3, false],
    ['<0.05', 0.05, true],
    ['trace', 0.1, true],
    ['none', 0, false],
    ['ND', 0, false],
    ['0.2-0.4', 0.3, false],
  ])('%j is %f mg/L', (text, mgL, atMost) => {
    const reading = readConcentration(text, 'iron', null)
    expect(reading.ok && reading.value.mgL).toBeCloseTo(mgL, 9)
    expect(reading.ok && reading.value.atMost).toBe(atMost)
  })

  test('a bare number is read in mg/L, and says so', () => {
    expect(readConcentration('0.3', 'iron', null)).toMatchObject({ assumptions: ['"0.3" was read in mg/L.'] })
    expect(readConcentration('300', 'iron', 'ug/L')).toMatchObject({ value: { mgL: 0.3 }, assumptions: [] })
  })

  test.each(['300', 'lots', '3 buckets', '-1'])('iron %j is refused', (text) =>
    expect(readConcentration(text, 'iron', null).ok).toBe(false),
  )
  // 40 CFR 141.65: at most 4.0 mg/L of chlorine as a yearly average, so a residual of 4 must pass.
  test('chlorine 4.0 passes, 40 does not', () => {
    expect(readConcentration('4.0', 'chlorine', null).ok).toBe(true)
    expect(readConcentration('40', 'chlorine', null).ok).toBe(false)
  })
})

describe('resin and disinfectant', () => {
  test.each([
    ['8 %', 'gel-8'],
    ['8% crosslink', 'gel-8'],
    ['08', 'gel-8'],
    ['10', 'gel-10'],
    ['10% X-link', 'gel-10'],
    ['0.1', 'gel-10'],
    ['0.08', 'gel-8'],
    ['Fine Mesh', 'fine-mesh'],
    ['fine mesh 8%', 'fine-mesh'],
    ['standard', 'gel-8'],
    ['8% / 10%', null],
    ['18 %', null],
    ['carbon', null],
    ['108', null],
  ])('%j is %j', (text, kind) => {
    const reading = readResinKind(text)
    expect(reading.ok ? reading.value : null).toBe(kind)
  })

  test.each([
    ['1.5 cu ft', null, 1.5],
    ['1½ ft3', null, 1.5],
    ['1.5', 'ft3', 1.5],
    ['25 L', null, 25 / 28.316846592],
    ['1.5', null, null],
    ['1.5 gallons', null, null],
    ['150 cu ft', null, null],
    ['0', 'L', null],
  ] as const)('the volume %j in %j', (text, unit, volumeFt3) => {
    const reading = readResinVolume(text, unit)
    if (volumeFt3 === null) expect(reading.ok).toBe(false)
    else expect(reading.ok && reading.value.resinVolumeFt3).toBeCloseTo(volumeFt3, 9)
  })

  test.each([
    ['Chlorine', 'free-chlorine'],
    ['free Cl2', 'free-chlorine'],
    ['Chloramine', 'chloramine'],
    ['monochloramine', 'chloramine'],
    ['chloromines', 'chloramine'],
    ['chloride', null],
    ['Chlorinated', 'free-chlorine'],
    ['Cl', 'free-chlorine'],
    ['sodium hypochlorite', 'free-chlorine'],
    ['none', 'none'],
    ['No chlorine', 'none'],
    ['un-chlorinated', 'none'],
    ['UV', 'none'],
    ['chlorine dioxide', null],
    ['banana', null],
  ])('%j is %j', (text, disinfectant) => {
    const reading = readDisinfectant(text)
    expect(reading.ok ? reading.value : null).toBe(disinfectant)
  })
})
