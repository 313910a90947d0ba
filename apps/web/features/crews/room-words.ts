import { formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { kgToLb, lbToKg } from '@almanac/units/mass'
import type { UnitSystem } from '@almanac/units/unit-system'
import { ft3ToL, lToFt3 } from '@almanac/units/volume'

type Room = { volumeFt3: number; weightLb: number }

/** "8 ft³, 900 lb". */
export const roomWords = ({ volumeFt3, weightLb }: Room, system: UnitSystem) =>
  `${formatVolumeFt3(volumeFt3, system)}, ${formatWeightLb(weightLb, system)}`

export const roomUnits = (system: UnitSystem) => (system === 'us' ? { volume: 'ft³', weight: 'lb' } : { volume: 'L', weight: 'kg' })

const tidy = (value: number) => String(Math.round(value * 10) / 10)

/** What a vehicle carries as text to type over, in the firm's units. */
export const roomTexts = ({ volumeFt3, weightLb }: Room, system: UnitSystem) => ({
  volume: tidy(system === 'us' ? volumeFt3 : ft3ToL(volumeFt3)),
  weight: tidy(system === 'us' ? weightLb : lbToKg(weightLb)),
})

/** Reads what was typed, in the firm's units; undefined for what is no amount. */
export function readRoom(texts: { volume: string; weight: string }, system: UnitSystem) {
  const number = (text: string) => {
    const value = text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'))
    return Number.isFinite(value) && value >= 0 ? value : undefined
  }
  const [volume, weight] = [number(texts.volume), number(texts.weight)]
  return {
    volumeFt3: volume === undefined ? undefined : system === 'us' ? volume : lToFt3(volume),
    weightLb: weight === undefined ? undefined : system === 'us' ? weight : kgToLb(weight),
  }
}
