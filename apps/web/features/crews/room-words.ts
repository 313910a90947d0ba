import type { AmountDisplay } from '@almanac/units/display'
import { formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { lbToKg } from '@almanac/units/mass'
import { numberText } from '@almanac/units/read-number'
import type { UnitSystem } from '@almanac/units/unit-system'
import { ft3ToL } from '@almanac/units/volume'

type Room = { volumeFt3: number; weightLb: number }

/** "8 ft³, 900 lb". */
export const roomWords = ({ volumeFt3, weightLb }: Room, display: AmountDisplay) =>
  `${formatVolumeFt3(volumeFt3, display)}, ${formatWeightLb(weightLb, display)}`

/** What a vehicle carries as text to type over, in the company's units. */
export const roomTexts = ({ volumeFt3, weightLb }: Room, system: UnitSystem, locale: string) => ({
  volume: { text: numberText(system === 'us' ? volumeFt3 : ft3ToL(volumeFt3), locale, 1) },
  weight: { text: numberText(system === 'us' ? weightLb : lbToKg(weightLb), locale, 1) },
})
