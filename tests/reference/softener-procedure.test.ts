import type { EmergencyKind } from '@almanac/records/procedure-ask'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import type { Procedure, ProcedureContext } from '@almanac/softener/procedure/procedure-types'
import { rebedBriefs } from '@almanac/softener/procedure/rebed-briefs'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { visitProcedure } from '@almanac/softener/procedure/visit-procedure'
import { describe, expect, it } from 'vitest'
import { ENGLISH } from '../support/procedure-words.ts'

const rebed = (change: Partial<ProcedureContext> = {}) =>
  rebedProcedure({ diameterIn: 10, heightIn: 54, display: { locale: 'en-US', unitSystem: 'us' }, ...change }, ENGLISH)
const at = (procedure: Procedure, id: string) => procedure.steps.findIndex((step) => step.id === id)
const step = (procedure: Procedure, id: string) => {
  const found = procedure.steps.find((one) => one.id === id)
  if (!found) throw new Error(`no step ${id}`)
  return found
}
const cautions = (procedure: Procedure, id: string) =>
  step(procedure, id)
    .cautions.map((item) => item.text)
    .join(' ')

// 1 gpg is 17.118 mg/L as CaCO3: 64.79891 mg a grain over 3.785411784 L a gallon.
describe('the limit at the valve outlet is your company’s own value, in its own unit', () => {
  it.each([
    ['us', 1, 'Below 1 gpg'],
    ['us', 2.5, 'Below 2.5 gpg'],
    ['metric', 1, 'Below 17 mg/L'],
  ] as const)('%s, %f gpg', (unitSystem, outletLimitGpg, words) => {
    const context = { display: { locale: 'en-US', unitSystem }, figures: { ...USUAL_FIGURES, outletLimitGpg } }
    expect(step(rebed(context), 'test-outlet').text).toContain(`${words} shows`)
    expect(rebedBriefs(context, ENGLISH)['test-outlet']).toContain(`${words}, little raw water gets by`)
  })
})

describe('order of a rebed (common practice, no source)', () => {
  const order = [
    'stop-and-refer',
    'check-water',
    'record-as-found',
    'close-hot-side',
    'prove-bypass',
    'pressure-off',
    'power-off',
    'bonding-jumper',
    'remove-valve',
    'measure-bed',
    'drain-tank',
    'take-out-media',
    'inspect-tank',
    'cut-tube',
    'cap-tube',
    'water-first',
    'pour-gravel',
    'pour-resin',
    'cap-out',
    'seat-valve',
    'reconnect',
    'start-in-backwash',
    'run-clear',
    'leaks-first',
    'test-outlet',
    'sanitise',
    'check-brine',
    'full-regeneration',
    'hand-over',
  ]
  it('follows the trade’s order', () => {
    const places = order.map((id) => at(rebed(), id))
    expect(places).not.toContain(-1)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(at(rebed(), 'stop-and-refer')).toBe(0)
  })
  it('pressure goes off before power, in every variant, and its step warns against unplugging first', () => {
    for (const valveNeedsPower of [true, null]) {
      const procedure = rebed({ valveNeedsPower })
      expect(at(procedure, 'pressure-off')).toBeLessThan(at(procedure, 'power-off'))
      expect(cautions(procedure, 'pressure-off')).toMatch(/Don’t unplug/)
    }
    expect(at(rebed({ valveNeedsPower: false }), 'power-off')).toBe(-1)
  })
  it('the bypass is proven before the pressure is let out, and the answer is required', () => {
    const [ask] = step(rebed(), 'prove-bypass').asks
    expect(ask).toMatchObject({ kind: 'choice', required: true })
    expect(ask?.choices.map((choice) => choice.value)).toEqual(['holds', 'leaks', 'cannot'])
  })
  it('the cap is counted in and out', () => {
    expect(step(rebed(), 'cap-tube').asks[0]).toMatchObject({ id: 'cap-on', required: true })
    expect(step(rebed(), 'cap-out').asks[0]).toMatchObject({ id: 'cap-out', required: true })
  })
  it('carries the cautions that matter where they matter', () => {
    expect(cautions(rebed(), 'stop-and-refer')).toMatch(/lead line, asbestos, a crawl space, a boil-water notice, a cracked tank/)
    expect(cautions(rebed(), 'drain-tank')).toMatch(/vacuum collapses a fiberglass tank/)
    expect(cautions(rebed(), 'take-out-media')).toMatch(
      /Drained it weighs about 116 lb, the heaviest lift of the job: two people, never one alone/,
    )
    expect(cautions(rebed(), 'sanitise')).toMatch(/Never mix bleach with iron cleaner/)
    expect(cautions(rebed(), 'pour-resin')).toMatch(/lifting index of 2\.2 \(NIOSH 94-110/)
    expect(step(rebed(), 'reconnect').text).toMatch(/twice the bore of the drain line, and at least 1 in/)
    expect(step(rebed(), 'test-outlet').text).toMatch(/valve outlet, not at a hot tap/)
    expect(cautions(rebed(), 'inspect-tank')).toMatch(/no patching/)
  })
})

describe('fits tank and site', () => {
  it('takes 1½ to 3 hours in a house, half to a full day from 21 in up (common practice, no source)', () => {
    for (const [diameterIn, heightIn] of [
      [7, 44],
      [10, 54],
      [14, 65],
      [18, 65],
    ]) {
      const { minutes, steps } = rebed({ diameterIn, heightIn })
      expect(minutes).toBeGreaterThanOrEqual(90)
      expect(minutes).toBeLessThanOrEqual(180)
      expect(steps.reduce((sum, one) => sum + one.minutes, 0)).toBe(minutes)
    }
    for (const [diameterIn, heightIn] of [
      [21, 62],
      [24, 72],
    ]) {
      const { minutes } = rebed({ diameterIn, heightIn })
      expect(minutes).toBeGreaterThanOrEqual(240)
      expect(minutes).toBeLessThanOrEqual(540)
    }
  })
  it('leaves out gravel, jumper and power where they are known not to be there, and says so where nobody knows', () => {
    const bare = rebed({ gravelLb: 0, metalPipe: false, valveNeedsPower: false, hasBypass: true, pressurePsi: 60 })
    for (const id of ['pour-gravel', 'bonding-jumper', 'power-off']) expect(at(bare, id)).toBe(-1)
    expect(rebed().assumptions.join(' ')).toMatch(/Bypass not recorded/)
  })
  it('pressure above 80 psi, no bypass, a well, a septic system', () => {
    expect(cautions(rebed({ pressurePsi: 85 }), 'check-water')).toMatch(/Pressure is above 80 psi/)
    expect(cautions(rebed({ pressurePsi: 80 }), 'check-water')).not.toMatch(/Pressure is above/)
    expect(step(rebed({ hasBypass: false }), 'prove-bypass').text).toMatch(/no bypass/)
    expect(step(rebed({ waterSource: 'private-well' }), 'clear-away').text).toMatch(/radium/)
    expect(cautions(rebed({ drain: 'septic' }), 'start-in-backwash')).toMatch(/septic system takes this flow badly/)
  })
  it('an empty record still gives a full procedure', () => {
    const { steps, assumptions } = rebedProcedure({ display: { locale: 'en-US', unitSystem: 'metric' } }, ENGLISH)
    expect(steps.length).toBeGreaterThan(25)
    expect(assumptions.length).toBeGreaterThan(2)
    expect(assumptions.join(' ')).toMatch(/Times are for 42 L/)
    expect(JSON.stringify(steps)).not.toMatch(/NaN|undefined|null ft/)
  })
})

describe('every procedure', () => {
  const all = [
    rebed(),
    ...(['annual-visit', 'cleaning', 'inspection', 'repair', 'emergency', 'installation', 'exchange', 'delivery'] as const).map((kind) =>
      visitProcedure(kind, { display: { locale: 'en-US', unitSystem: 'us' } }, ENGLISH),
    ),
  ]
  it.each(all.map((one) => [one.title, one] as const))('%s: ids are unique, texts are there, choices have answers', (_title, { steps }) => {
    const ids = steps.map((one) => one.id)
    expect(new Set(ids).size).toBe(ids.length)
    const asks = steps.flatMap((one) => one.asks)
    expect(new Set(asks.map((ask) => ask.id)).size).toBe(asks.length)
    for (const one of steps) expect(one.title.length * one.text.length * one.minutes).toBeGreaterThan(0)
    for (const ask of asks) {
      expect(ask.kind === 'choice' ? ask.choices.length : 1).toBeGreaterThanOrEqual(ask.kind === 'choice' ? 2 : 1)
      expect(ask.unit === null).toBe(ask.kind !== 'number')
    }
  })
  it('an emergency begins with what happened, then whether it is safe to start, then what that one needs', () => {
    const begins = (emergency: EmergencyKind | null) =>
      visitProcedure('emergency', { display: { locale: 'en-US', unitSystem: 'us' }, emergency }, ENGLISH).steps.map((one) => one.id)
    expect(begins(null)).toEqual(['what-happened', 'stop-and-refer', 'leave-safe'])
    expect(begins('beads')).toEqual(['what-happened', 'stop-and-refer', 'stop-beads', 'leave-safe'])
    expect(begins('burst')).toEqual(['what-happened', 'stop-and-refer', 'stop-water', 'leave-safe'])
    expect(begins('no-water')).toEqual(['what-happened', 'stop-and-refer', 'find-water', 'leave-safe'])
  })
  it('beads at the taps: bypass first; a heater is cooled and switched off before it is drained', () => {
    const beads = visitProcedure('emergency', { display: { locale: 'en-US', unitSystem: 'us' }, emergency: 'beads' }, ENGLISH)
    expect(step(beads, 'stop-beads').text).toMatch(/^Softener in bypass\. Close the hot water/)
    expect(cautions(beads, 'stop-beads')).toMatch(/scalds.*Power off at the breaker, gas to pilot/)
  })
})

// Common practice, no source: what an earlier visit took away cannot be taken away again.
it('a tank that stands empty is filled without an old bed to measure, take out or take away', () => {
  const ids = (emptied: boolean) => rebed({ emptied }).steps.map((one) => one.id)
  expect(ids(false)).toEqual(expect.arrayContaining(['measure-bed', 'drain-tank', 'take-out-media']))
  expect(ids(true).filter((id) => ['measure-bed', 'drain-tank', 'take-out-media'].includes(id))).toEqual([])
  const last = rebed({ emptied: true }).steps.at(-1)
  expect(JSON.stringify(last)).not.toMatch(/[Pp]ail|spent/)
  expect(last?.title).not.toMatch(/old bed/)
})
