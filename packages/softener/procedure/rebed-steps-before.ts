import type { ShutOff } from '@almanac/records/procedure-ask'
import { caution, choice, confirm, number, type StepRule, worded } from './step-rules.ts'

/** Reasons to stop and refer, asked before anything is touched. */
export const STOP_CASES = [
  'none: None of these',
  'lead-line: Lead service line or lead pipe',
  'asbestos: Asbestos where we would work',
  'crawl-space: Crawl space or other confined space',
  'boil-water: Boil-water notice in force',
  'cracked-tank: Cracked tank',
  'permit: Work that needs a permit or a licence we do not hold',
] as const

const SHUT_OFF: Record<ShutOff, string> = {
  holds: 'It holds',
  leaks: 'It leaks, closed at the main',
  cannot: 'Cannot be shut off, job stopped',
}

/** From arrival to a softener without pressure and without power. Pressure goes off before power: without power the valve cannot be moved to let it out. */
export const STEPS_BEFORE: readonly StepRule[] = [
  {
    id: 'stop-and-refer',
    title: 'Look for reasons to stop',
    text: 'Look round before unloading. If any of these is found, stop, make safe and refer the job. The local plumbing code and a licensed person come first.',
    minutes: 3,
    cautions: [
      caution(
        'refer',
        'Stop and refer at a lead line, asbestos, a crawl space, a boil-water notice, a cracked tank, or work that needs a permit or licence.',
      ),
      caution(
        'lifting',
        'Plan the way out for the old resin before starting: stairs and tight corners need a second person or smaller loads.',
        (facts) => facts.access !== 'level',
      ),
    ],
    asks: [choice('stop-case', 'Reason to stop', STOP_CASES)],
  },
  {
    id: 'check-water',
    title: 'Check that the water is not the problem',
    text: 'Test the hardness before the softener and at the valve outlet. Compare with the last test: if the supply has changed, or the bypass is open, a new bed cures nothing.',
    minutes: 6,
    cautions: [
      caution(
        'pressure',
        'Pressure is above 80 psi (5.5 bar): it wants a regulator, and expansion control where flow is checked. Tell the customer before going on.',
        (facts) => facts.highPressure,
      ),
      caution(
        'pressure',
        'Read the pressure. Above 80 psi (5.5 bar) it wants a regulator, and expansion control where flow is checked.',
        (facts) => !facts.highPressure,
      ),
    ],
    asks: [
      number('hardness-raw-gpg', 'Hardness before the softener', 'hardness', true),
      number('hardness-outlet-before-gpg', 'Hardness at the valve outlet', 'hardness', true),
      number('pressure-psi', 'Water pressure', 'pressure'),
      number('iron-mg-l', 'Iron before the softener', 'iron', false, (facts) => facts.waterSource !== 'town'),
      number(
        'chlorine-total-mg-l',
        'Total chlorine before the softener',
        'chlorine',
        false,
        (facts) => facts.waterSource !== 'private-well',
      ),
    ],
  },
  {
    id: 'record-as-found',
    title: 'Record as found',
    text: 'Take a sample at the valve outlet. Photograph the valve, the pipework, the drain and the brine tank. Note the settings of the valve.',
    minutes: 4,
    asks: [
      confirm('photographed', 'Photographed as found'),
      confirm('settings-noted', 'Valve settings noted'),
      number('salt-dose-lb', 'Salt setting for one regeneration', 'saltDose'),
    ],
  },
  {
    id: 'close-hot-side',
    title: 'Close the hot-water side',
    text: 'Close the cold inlet of the water heater, so that nothing flows back from it.',
    minutes: 1,
    cautions: [caution('water', 'Hot water can run back when the pressure goes: close the heater before the bypass is moved.')],
    asks: [confirm('hot-side-closed', 'Hot-water side closed')],
  },
  {
    id: 'prove-bypass',
    title: 'Bypass, and prove that it holds',
    text: ({ hasBypass }) =>
      hasBypass === false
        ? 'There is no bypass: close the stop valve before the softener and the one after it, or the main. Open a cold tap to prove that no water comes.'
        : 'Put the softener in bypass. Prove that it holds: with the valve in backwash or a tap on the softener side open, the flow must die away and stay away.',
    minutes: 4,
    cautions: [
      caution(
        'water',
        'A bypass that leaks floods the room once the valve is off. If it does not hold, close the main, and repair or replace it first.',
      ),
      caution('refer', 'Tell the household that the water is off, and for how long.', ({ hasBypass }) => hasBypass === false),
    ],
    asks: [choice('bypass-holds', 'Does the shut-off hold?', worded(SHUT_OFF))],
  },
  {
    id: 'pressure-off',
    title: 'Let the pressure out',
    text: ({ valveNeedsPower }) =>
      valveNeedsPower === false
        ? 'Turn the valve to backwash by hand. Wait until the drain stops running: the pressure is then zero.'
        : 'Move the valve to backwash while it still has power. Wait until the drain stops running: the pressure is then zero.',
    minutes: 4,
    cautions: [
      caution(
        'pressure',
        'The tank is under full house pressure until the drain has stopped. Loosen nothing before. Do not unplug the valve yet.',
      ),
    ],
    asks: [confirm('pressure-zero', 'Drain has stopped, pressure is zero')],
  },
  {
    id: 'power-off',
    title: 'Unplug the valve',
    text: 'Only now unplug the valve.',
    minutes: 1,
    when: ({ valveNeedsPower }) => valveNeedsPower !== false,
    cautions: [caution('electricity', 'Pull the plug with dry hands, and lay it where no water reaches it.')],
    asks: [confirm('unplugged', 'Valve unplugged, after the pressure was let out')],
  },
  {
    id: 'bonding-jumper',
    title: 'Fit a bonding jumper',
    text: ({ metalPipe }) =>
      metalPipe === true
        ? 'Fit a bonding jumper across the softener before the pipe is opened.'
        : 'Where the pipe is metal, fit a bonding jumper across the softener before it is opened.',
    minutes: 2,
    when: ({ metalPipe }) => metalPipe !== false,
    cautions: [caution('electricity', 'Metal pipe may earth the house. Opened without a jumper it can give a shock.')],
    asks: [choice('bonding', 'Bonding jumper', ['fitted: Fitted', 'not-needed: Not needed, no metal pipe'])],
  },
]
