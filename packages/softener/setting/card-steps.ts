import { formatFlowGpm, formatWaterGal } from '@almanac/units/format'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { REFILL_LB_PER_GAL } from '../water/regeneration.ts'
import type { CardFacts } from './card-facts.ts'
import type { CardLine, WhyWords } from './card-types.ts'

/** The steps of a regeneration in their order, with the minutes to set. */
export function stepLines(facts: CardFacts): CardLine[] {
  const { setting, dose, display, input } = facts
  const { minutes } = setting
  const why = (title: string, summary: string, formula: string, source: string, inputs: WhyWords['inputs'] = []): WhyWords => ({
    ...{ title, summary, inputs, formula, source },
    assumptions: [],
    missing: [],
  })
  const salt = { name: 'Salt', value: facts.doseWords(dose.saltLbFt3) }
  const flow = input.backwashGpm
  return [
    {
      id: 'backwash',
      label: 'Backwash',
      value: `${minutes.backwash} minutes`,
      hint: flow === null ? 'flow control in the valve not known' : `flow control ${formatFlowGpm(flow, display)}`,
      why: why(
        'Backwash',
        'Water runs up through the bed and washes out dirt.',
        'Long enough to lift out what has settled: 5 to 15 minutes. Longer where iron is high.',
        'Ten States Standards §4.4.2',
      ),
    },
    {
      id: 'brine',
      label: 'Brine and slow rinse',
      value: `${minutes.brineAndSlowRinse} minutes`,
      hint: 'until the brine tank is drawn down and rinsed through',
      why: why(
        'Brine and slow rinse',
        'Salt water soaks the bed, then slowly rinses through it.',
        '(Salt ÷ 0.894 lb a gallon of 10% brine + 10 gal/ft³ of rinse) ÷ 0.35 gpm/ft³. The valve’s injector sets the true rate: see that all brine is drawn.',
        'Davis, Water and Wastewater Engineering, 2010: 8 to 12%, 0.25 to 0.62 gpm/ft³; rinse 7.5 to 22.5 gal/ft³ (also UFC 3-240-13FN)',
        [salt, { name: 'Resin', value: facts.resinWords }],
      ),
    },
    {
      id: 'fast-rinse',
      label: 'Fast rinse',
      value: `${minutes.fastRinse} minutes`,
      why: why(
        'Fast rinse',
        'A quick rinse packs the bed and washes out the last brine.',
        'Packs the bed and takes the last brine out: 5 to 15 minutes at 1.5 to 2 gpm/ft³.',
        'UFC 3-240-13FN; Davis 2010',
      ),
    },
    {
      id: 'refill',
      label: setting.tanks === 2 ? 'Brine refill for each tank' : 'Brine refill',
      value: minutes.refill === null ? formatWaterGal(setting.refillGal, display) : `${minutes.refill} minutes`,
      hint:
        minutes.refill === null
          ? 'refill flow of the valve not known: see the valve for the minutes'
          : `${formatWaterGal(setting.refillGal, display)} at ${formatFlowGpm(input.refillGpm, display)}`,
      why: {
        ...why(
          'Brine refill',
          'The valve adds just enough water to dissolve the salt for the next regeneration.',
          `Salt ÷ ${REFILL_LB_PER_GAL[input.salt]} lb that one gallon of refill water dissolves; then by the refill flow of the valve. A gallon of ready brine holds less (2.65 lb of sodium chloride): mixing the two up is a 13% error.`,
          input.salt === 'NaCl'
            ? 'the 3 lb a gallon rule; 2.99 derived from 26.4% brine'
            : '2.6 lb a gallon at 50 °F, from memory, unverified',
          [salt, { name: 'Refill flow', value: formatFlowGpm(input.refillGpm, display), from: facts.sources.refillGpm }],
        ),
        missing: input.refillGpm === null ? ['refill flow of the valve'] : [],
      },
    },
    {
      id: 'brine-level',
      label: 'Salt in the brine tank',
      value: 'always above the water',
      why: why(
        'Salt in the brine tank',
        'Brine is full strength only while there’s salt left to dissolve.',
        'Salt above the water means that the brine is saturated.',
        COMMON_PRACTICE,
      ),
    },
  ]
}
