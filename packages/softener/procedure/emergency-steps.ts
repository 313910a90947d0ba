import { emergencies } from '@almanac/records/procedure-ask'
import { caution, choice, confirm, type StepRule } from './step-rules.ts'
import { LOOK_ROUND } from './visit-steps.ts'

/** An emergency begins with what happened, and with whether it is safe to start; only then comes what that one needs. */
export const EMERGENCY: readonly StepRule[] = [
  {
    id: 'what-happened',
    minutes: 3,
    cautions: [caution('electricity', 'standing-water')],
    asks: [choice('happened', emergencies)],
  },
  LOOK_ROUND,
  {
    id: 'stop-beads',
    minutes: 60,
    when: ({ emergency }) => emergency === 'beads',
    cautions: [caution('water', 'beads-emergency'), caution('water', 'scald'), caution('electricity', 'dry-firing')],
    asks: [confirm('bypassed'), confirm('flushed'), choice('cause', ['distributor', 'worn', 'filled-wrong', 'unknown'])],
  },
  {
    id: 'stop-water',
    minutes: 40,
    when: ({ emergency }) => emergency === 'burst',
    cautions: [caution('pressure', 'crack')],
    asks: [confirm('water-stopped'), choice('burst-from', ['line', 'bypass', 'valve', 'brine-tank', 'tank'])],
  },
  {
    id: 'find-water',
    minutes: 40,
    when: ({ emergency }) => emergency === 'no-water',
    asks: [choice('no-water-from', ['valve', 'bed', 'bypass', 'supply', 'unknown'])],
  },
  {
    id: 'leave-safe',
    minutes: 10,
    asks: [choice('left-as', ['in-service', 'in-bypass'])],
  },
]
