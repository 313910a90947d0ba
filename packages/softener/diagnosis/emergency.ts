import type { Key } from '@almanac/words/words'
import type { DiagnosisSource } from './causes.ts'

type Says = Exclude<Key<'emergency'>, 'source'>
/** What to tell on the telephone and what to do on site, in order, by key among the words. */
export type Emergency = { sayNow: readonly Says[]; onSite: readonly Says[]; source: DiagnosisSource }

/** Beads at the taps: the same day, before anything else. */
export const BEADS_AT_TAPS: Emergency = {
  sayNow: ['say/bypass', 'say/hot-water', 'say/appliances', 'say/aerators', 'say/drinking', 'say/main'],
  onSite: ['do/bypass', 'do/flush', 'do/screens', 'do/heater', 'do/stays'],
  source: 'practice',
}
