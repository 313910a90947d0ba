import { formatFlowGpm, formatWaterGal } from '@almanac/units/format'
import { REFILL_LB_PER_GAL } from '../water/regeneration.ts'
import type { CardFacts } from './card-facts.ts'
import type { CardLine, WhyWords } from './card-types.ts'
import { RINSE_SOURCE, TEN_STATES } from './standards.ts'

/** The steps of a regeneration in their order, with the minutes to set. */
export function stepLines(facts: CardFacts): CardLine[] {
  const { setting, dose, display, input, card, why } = facts
  const { minutes } = setting
  const asked = (id: 'backwash' | 'brine' | 'fastRinse', source: string, inputs: WhyWords['inputs'] = []): WhyWords => ({
    ...{ title: why(id), summary: why(`${id}/sum`), inputs, formula: why(`${id}/how`), source },
    ...{ assumptions: [], missing: [] },
  })
  const salt = { name: why('in/salt'), value: facts.doseWords(dose.saltLbFt3) }
  const flow = input.backwashGpm
  const refillGal = formatWaterGal(setting.refillGal, display)
  const refillFlow = formatFlowGpm(input.refillGpm, display)
  const unknown = minutes.refill === null
  return [
    {
      id: 'backwash',
      label: card('backwash'),
      value: card('minutes', { minutes: minutes.backwash }),
      hint: flow === null ? card('controlUnknown') : card('control', { flow: formatFlowGpm(flow, display) }),
      why: asked('backwash', TEN_STATES),
    },
    {
      id: 'brine',
      label: card('brine'),
      value: card('minutes', { minutes: minutes.brineAndSlowRinse }),
      hint: card('brineHint'),
      why: asked('brine', why('brine/source'), [salt, { name: why('in/resin'), value: facts.resinWords }]),
    },
    {
      id: 'fast-rinse',
      label: card('fastRinse'),
      value: card('minutes', { minutes: minutes.fastRinse }),
      why: asked('fastRinse', RINSE_SOURCE),
    },
    {
      id: 'refill',
      label: card(setting.tanks === 2 ? 'refillEach' : 'refill'),
      value: minutes.refill === null ? refillGal : card('minutes', { minutes: minutes.refill }),
      hint: unknown ? card('refillUnknown') : card('refillAt', { water: refillGal, flow: refillFlow }),
      why: {
        ...{ title: why('refill'), summary: why('refill/sum') },
        formula: why('refill/how', { lb: String(REFILL_LB_PER_GAL[input.salt]) }),
        source: why(`refill/${input.salt}`),
        inputs: [salt, { name: why('in/refill'), value: refillFlow, from: facts.sources.refillGpm }],
        assumptions: [],
        missing: input.refillGpm === null ? [why('missing/refill')] : [],
      },
    },
    {
      id: 'brine-level',
      label: card('saltLevel'),
      value: card('aboveWater'),
      why: {
        ...{ title: why('level'), summary: why('level/sum'), formula: why('level/how'), source: why('practice') },
        ...{ inputs: [], assumptions: [], missing: [] },
      },
    },
  ]
}
