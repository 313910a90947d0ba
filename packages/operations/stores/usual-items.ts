import { shortResinKindWords } from '@almanac/records/resin-kind'
import type { StockKind, StockUnit } from '@almanac/records/stock'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { bagName, CUBIC_FOOT_BAGS, LITRE_BAGS } from '@almanac/softener/kit/bag-plan'
import { TUBE_OUTSIDE_DIAMETERS_IN, tubeDiameterText } from '@almanac/softener/tanks/distributor-tube'
import type { Display } from '@almanac/units/display'
import type { Words } from '@almanac/words/words'

export type UsualItem = {
  name: string
  kind: StockKind
  unit: StockUnit
  bagFt3?: number
  resinKind?: 'gel-8' | 'gel-10'
  tubeOdIn?: number
}

/** What a rebed takes from the stores, in the company's own bags, and the salt that goes with a delivery: a list to begin with. Common practice, no source. */
export function usualItems(figures: Pick<FirmFigures, 'bagSizes'>, display: Display, words: Words<'kit'>): UsualItem[] {
  const bags = figures.bagSizes ?? (display.unitSystem === 'metric' ? LITRE_BAGS : CUBIC_FOOT_BAGS)
  const resins = (['gel-8', 'gel-10'] as const).flatMap((resinKind) =>
    bags.map(({ volumeFt3 }): UsualItem => {
      const name = `${shortResinKindWords[resinKind]} resin, ${bagName(volumeFt3, words)}`
      return { name, kind: 'resin', unit: 'bag', bagFt3: volumeFt3, resinKind }
    }),
  )
  const tubes = [TUBE_OUTSIDE_DIAMETERS_IN.domestic, TUBE_OUTSIDE_DIAMETERS_IN.commercial].map(
    (tubeOdIn): UsualItem => ({
      name: `Distributor tube ${tubeDiameterText(tubeOdIn, display)} with basket`,
      kind: 'tube',
      unit: 'piece',
      tubeOdIn,
    }),
  )
  return [
    ...resins,
    { name: 'Quartz gravel', kind: 'gravel', unit: 'lb' },
    ...tubes,
    { name: 'Tube cap', kind: 'cap', unit: 'piece' },
    { name: 'Seal set', kind: 'seal', unit: 'set' },
    { name: 'Silicone grease', kind: 'grease', unit: 'piece' },
    { name: 'Plain bleach, resin sanitizer', kind: 'sanitiser', unit: 'fl oz' },
    { name: 'Lidded pail for old resin', kind: 'container', unit: 'piece' },
    { name: display.unitSystem === 'metric' ? 'Salt, 25 kg bag' : 'Salt, 40 lb bag', kind: 'salt', unit: 'bag' },
  ]
}
