import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { evaluateSite, type SiteEvaluation } from '@almanac/softener/site/evaluate-site'
import { type SiteInput, UNKNOWN_SITE } from '@almanac/softener/site/site-input'
import { CARD } from './speaking.ts'

/** An invented house: 1½ ft³ of 8% in a 10 × 54 in tank, four people, 18 gpg. */
export const HOUSE: SiteInput = {
  ...UNKNOWN_SITE,
  ...{ diameterIn: 10, heightIn: 54, resinFt3: 1.5, gravelLb: 18, resinKind: 'gel-8', bedAgeYears: 0, hardnessGpg: 18, ironMgL: 0 },
  ...{
    manganeseMgL: 0,
    coldestF: 50,
    warmestF: 70,
    people: 4,
    backwashGpm: 2,
    control: 'meter',
    refillGpm: 0.5,
    controlsGpm: [1.5, 2, 2.4],
  },
}

export const US_WORDS = { ...CARD, sources: {} } as const

/** The house evaluated; throws the sentence where it is refused. */
export function evaluatedHouse(figures: FirmFigures, change: Partial<SiteInput> = {}): SiteEvaluation {
  const found = evaluateSite({ ...HOUSE, ...change }, figures, CARD)
  if ('reason' in found) throw new Error(found.reason)
  return found
}
