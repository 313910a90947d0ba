export type TemperatureUnit = 'F' | 'C' | 'K'

export const fToC = (temperatureF: number): number => ((temperatureF - 32) * 5) / 9
export const cToF = (temperatureC: number): number => (temperatureC * 9) / 5 + 32
const cToK = (temperatureC: number): number => temperatureC + 273.15
const kToC = (temperatureK: number): number => temperatureK - 273.15

/** Converts a temperature reading (not a difference) between scales. */
export function convertTemperature(value: number, from: TemperatureUnit, to: TemperatureUnit): number {
  if (from === to) return value
  const celsius = from === 'F' ? fToC(value) : from === 'K' ? kToC(value) : value
  return to === 'F' ? cToF(celsius) : to === 'K' ? cToK(celsius) : celsius
}
