import { stopCases } from '@almanac/records/procedure-ask'
import { caution, choice, confirm, number, type StepRule } from './step-rules.ts'

/** Steps that several kinds of visit share. */
export const LOOK_ROUND: StepRule = {
  id: 'stop-and-refer',
  text: 'stop-and-refer/text-short',
  minutes: 3,
  cautions: [caution('refer', 'stop-cases')],
  asks: [choice('stop-case', stopCases)],
}

export const TEST_WATER: StepRule = {
  id: 'test-water',
  minutes: 8,
  asks: [
    number('hardness-raw-gpg', 'hardness', true),
    number('hardness-outlet-gpg', 'hardness', true),
    number('iron-mg-l', 'iron', false, (facts) => facts.waterSource !== 'town'),
    number('chlorine-total-mg-l', 'chlorine', false, (facts) => facts.waterSource !== 'private-well'),
  ],
}

export const CHECK_BRINE_TANK: StepRule = {
  id: 'check-brine-tank',
  minutes: 8,
  asks: [
    choice('salt', ['enough', 'low', 'bridged', 'empty']),
    number('brine-level-in', 'depth'),
    confirm('overflow-drained', { required: false }),
  ],
}

export const CHECK_SETTINGS: StepRule = { id: 'check-settings', minutes: 5, asks: [confirm('settings-right')] }

export const RUN_REGENERATION: StepRule = {
  id: 'check-regeneration',
  minutes: 15,
  asks: [choice('drain-clear', ['clear', 'fines', 'beads']), choice('brine-draw', ['draws', 'slow', 'none'])],
}

/** The same test after the work, which is not done while the water is hard. */
export const TEST_AFTER: StepRule = {
  id: 'test-outlet',
  text: 'test-outlet/text-after',
  minutes: 5,
  asks: [number('hardness-outlet-after-gpg', 'hardness', true)],
}

export const LEAVE_RUNNING: StepRule = {
  id: 'hand-over',
  title: 'hand-over-short',
  text: 'hand-over/text-short',
  minutes: 5,
  asks: [confirm('in-service', { says: 'in-service-short' })],
}

export const DEPRESSURISE: StepRule = {
  id: 'pressure-off',
  text: 'pressure-off/text-short',
  minutes: 8,
  cautions: [caution('pressure', 'full-pressure-short'), caution('electricity', 'ground', (facts) => facts.metalPipe !== false)],
  asks: [confirm('pressure-zero', { says: 'pressure-zero-short' }), confirm('pressure-second')],
}
