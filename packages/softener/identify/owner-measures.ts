import type { GuideMeasure } from '@almanac/records/guide-measure'
import { type AmountRule, ruleOf } from '@almanac/units/amount-kinds'
import { CLUE_LIMITS } from './check-clues.ts'

/** How an owner's measurement is read: as the same clue that a crew's tape gives. */
export const OWNER_MEASURES: Readonly<Record<GuideMeasure, AmountRule>> = {
  around: { ...ruleOf('tankMeasure'), ...CLUE_LIMITS.circumferenceIn },
  height: { ...ruleOf('tankMeasure'), ...CLUE_LIMITS.heightIn, example: '48' },
}

/** How wide a tank is that measures so much around, in inches: a circle's diameter. */
export const acrossIn = (aroundIn: number): number => aroundIn / Math.PI
