import { STOP_CASES } from './rebed-steps-before.ts'
import { caution, choice, confirm, number, type StepRule } from './step-rules.ts'

/** Steps that several kinds of visit share. */
export const LOOK_ROUND: StepRule = {
  id: 'stop-and-refer',
  title: 'Look for reasons to stop',
  text: 'If any of these is found, stop and refer. The local plumbing code and a licensed person come first.',
  minutes: 3,
  cautions: [
    caution(
      'refer',
      'Stop and refer at a lead line, asbestos, a crawl space, a boil-water notice, a cracked tank, or work that needs a permit or licence.',
    ),
  ],
  asks: [choice('stop-case', 'Reason to stop', STOP_CASES)],
}

export const TEST_WATER: StepRule = {
  id: 'test-water',
  title: 'Test the water',
  text: 'Test hardness before the softener and at the valve outlet, not at a hot tap.',
  minutes: 8,
  asks: [
    number('hardness-raw-gpg', 'Hardness before the softener', 'hardness', true),
    number('hardness-outlet-gpg', 'Hardness at the valve outlet', 'hardness', true),
    number('iron-mg-l', 'Iron before the softener', 'iron', false, (facts) => facts.waterSource !== 'town'),
    number('chlorine-total-mg-l', 'Total chlorine before the softener', 'chlorine', false, (facts) => facts.waterSource !== 'private-well'),
  ],
}

export const CHECK_BRINE_TANK: StepRule = {
  id: 'check-brine-tank',
  title: 'Look at salt and brine',
  text: 'Look for a salt bridge, sludge and the water level. Clean the brine well if it is dirty.',
  minutes: 8,
  asks: [
    choice('salt', 'Salt', ['enough: Enough', 'low: Low', 'bridged: Bridged', 'empty: Empty']),
    number('brine-level-in', 'Water level in the brine tank', 'depth'),
  ],
}

export const CHECK_SETTINGS: StepRule = {
  id: 'check-settings',
  title: 'Check the settings',
  text: 'Compare hardness, time and salt setting with the record and with the water just tested.',
  minutes: 5,
  asks: [confirm('settings-right', 'Settings agree with the water')],
}

export const RUN_REGENERATION: StepRule = {
  id: 'check-regeneration',
  title: 'Step through a regeneration',
  text: 'Start a manual regeneration: backwash runs clear, brine draws, refill stops at the right height.',
  minutes: 15,
  asks: [
    choice('drain-clear', 'Drain in backwash', ['clear: Clear', 'fines: Fines', 'beads: Beads']),
    choice('brine-draw', 'Brine draw', ['draws: It draws', 'slow: Slow', 'none: It does not draw']),
  ],
}

export const LEAVE_RUNNING: StepRule = {
  id: 'hand-over',
  title: 'Leave it running',
  text: 'Bypass in service, no leaks, clock right, salt topped up. Tell the household what was found.',
  minutes: 5,
  asks: [confirm('in-service', 'In service, no leaks')],
}

export const DEPRESSURISE: StepRule = {
  id: 'pressure-off',
  title: 'Bypass and let the pressure out',
  text: 'Put the softener in bypass and prove that it holds. Move the valve to backwash while it still has power until the drain stops: the pressure is zero. Only then unplug it.',
  minutes: 8,
  cautions: [
    caution(
      'pressure',
      'The tank is under full house pressure until the drain has stopped. Loosen nothing before, and do not unplug the valve before.',
    ),
    caution('electricity', 'Fit a bonding jumper before a metal pipe is opened.', (facts) => facts.metalPipe !== false),
  ],
  asks: [confirm('pressure-zero', 'Bypass holds, pressure is zero, then unplugged')],
}
