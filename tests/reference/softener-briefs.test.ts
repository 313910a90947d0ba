import type { ProcedureContext } from '@almanac/softener/procedure/procedure-types'
import { rebedBriefs } from '@almanac/softener/procedure/rebed-briefs'
import { rebedProcedure } from '@almanac/softener/procedure/rebed-procedure'
import { describe, expect, it } from 'vitest'
import { ENGLISH } from '../support/procedure-words.ts'

const CONTEXTS: ProcedureContext[] = [
  { display: { locale: 'en-US', unitSystem: 'us' } },
  { display: { locale: 'en-US', unitSystem: 'metric' }, diameterIn: 24, heightIn: 72 },
  {
    display: { locale: 'en-US', unitSystem: 'us' },
    diameterIn: 10,
    heightIn: 54,
    hasBypass: false,
    metalPipe: true,
    valveNeedsPower: true,
    waterSource: 'private-well',
    gravelLb: 18,
  },
]

describe('the steps in brief, for paper', () => {
  it('every step of a rebed has one, and none is longer than the step itself', () => {
    for (const context of CONTEXTS) {
      const briefs = rebedBriefs(context, ENGLISH)
      for (const step of rebedProcedure(context, ENGLISH).steps) {
        expect([step.id, typeof briefs[step.id]]).toEqual([step.id, 'string'])
        expect([step.id, (briefs[step.id] ?? '').length <= step.text.length + 40]).toEqual([step.id, true])
      }
    }
  })
  // Common practice, no source: what must not get lost on the way to paper.
  it.each([
    ['pressure-off', /while it has power: drain seen running, then stopped\. Second proof/],
    ['power-off', /Only now/],
    ['cap-out', /one in, one out/],
    ['seat-valve', /¼ to ½ turn/],
    ['reconnect', /twice the drain’s bore, at least 1 in/],
    ['test-outlet', /before the regeneration, not at a hot tap/],
  ])('%s keeps its point', (id, point) =>
    expect(rebedBriefs({ display: { locale: 'en-US', unitSystem: 'us' } }, ENGLISH)[id]).toMatch(point),
  )
  it('follows the site: no bypass, a commercial tank, a well', () => {
    expect(rebedBriefs({ display: { locale: 'en-US', unitSystem: 'us' }, hasBypass: false }, ENGLISH)['prove-bypass']).toMatch(/No bypass/)
    expect(
      rebedBriefs({ display: { locale: 'en-US', unitSystem: 'us' }, diameterIn: 24, heightIn: 72 }, ENGLISH)['take-out-media'],
    ).not.toMatch(/tip/)
    expect(rebedBriefs({ display: { locale: 'en-US', unitSystem: 'us' }, waterSource: 'private-well' }, ENGLISH)['clear-away']).toMatch(
      /radium/,
    )
  })
})
