import { gpmToLMin } from './flow.ts'
import { NOT_KNOWN, showEighths, showNumber, withUnit } from './format-number.ts'
import { gpgToMgL } from './hardness.ts'
import { inToMm } from './length.ts'
import { lbToKg } from './mass.ts'
import { convertPressure } from './pressure.ts'
import { fToC } from './temperature.ts'
import type { UnitSystem } from './unit-system.ts'
import { convertVolume, ft3ToL, galToL } from './volume.ts'

/** A value that may be missing: shown as "not known", never as NaN. */
export type Shown = number | null | undefined

const known = (value: Shown): value is number => value !== null && value !== undefined && Number.isFinite(value)

/** Resin or tank volume: "1½ ft³" where the value is within 0.01 of an eighth, else decimals; metric "42 L". */
export function formatVolumeFt3(volumeFt3: Shown, system: UnitSystem): string {
  if (!known(volumeFt3)) return NOT_KNOWN
  if (system === 'metric') return formatLitres(ft3ToL(volumeFt3))
  const eighths = Math.round(volumeFt3 * 8) / 8
  const asRule = eighths > 0 && Math.abs(eighths - volumeFt3) < 0.01
  return asRule ? `${showEighths(volumeFt3)} ft³` : withUnit(volumeFt3, 2, 'ft³')
}

function formatLitres(volumeL: number): string {
  return withUnit(volumeL, Math.abs(volumeL) < 10 ? 1 : 0, 'L')
}

/** Water: gallons or litres. */
export function formatWaterGal(volumeGal: Shown, system: UnitSystem): string {
  if (!known(volumeGal)) return NOT_KNOWN
  return system === 'us' ? withUnit(volumeGal, Math.abs(volumeGal) < 20 ? 1 : 0, 'gal') : formatLitres(galToL(volumeGal))
}

/** A length as measured: nearest ⅛ in, or mm below 10 cm and cm above. */
export function formatLengthIn(lengthIn: Shown, system: UnitSystem): string {
  if (!known(lengthIn)) return NOT_KNOWN
  if (system === 'us') return `${showEighths(lengthIn)} in`
  const mm = inToMm(lengthIn)
  return Math.abs(mm) < 100 ? withUnit(mm, 0, 'mm') : withUnit(mm / 10, 1, 'cm')
}

/** A length to cut to: nearest ⅛ in, or whole millimetres. */
export function formatCutLengthIn(lengthIn: Shown, system: UnitSystem): string {
  if (!known(lengthIn)) return NOT_KNOWN
  return system === 'us' ? `${showEighths(lengthIn)} in` : withUnit(inToMm(lengthIn), 0, 'mm')
}

/** Tank size as written on labels: "10 × 54 in" or "25 × 137 cm". */
export function formatTankSize(diameterIn: Shown, heightIn: Shown, system: UnitSystem): string {
  if (!known(diameterIn) || !known(heightIn)) return NOT_KNOWN
  const show = (lengthIn: number) => (system === 'us' ? showNumber(lengthIn, 1) : showNumber(inToMm(lengthIn) / 10, 0))
  return `${show(diameterIn)} × ${show(heightIn)} ${system === 'us' ? 'in' : 'cm'}`
}

/** Hardness: gpg to one decimal, or whole mg/L as CaCO₃. */
export function formatHardnessGpg(hardnessGpg: Shown, system: UnitSystem): string {
  if (!known(hardnessGpg)) return NOT_KNOWN
  if (system === 'us') return withUnit(hardnessGpg, 1, 'gpg')
  const mgL = gpgToMgL(hardnessGpg)
  return withUnit(mgL, Math.abs(mgL) < 10 ? 1 : 0, 'mg/L')
}

/** Flow: gpm or L/min, one decimal. */
export function formatFlowGpm(flowGpm: Shown, system: UnitSystem): string {
  if (!known(flowGpm)) return NOT_KNOWN
  return system === 'us' ? withUnit(flowGpm, 1, 'gpm') : withUnit(gpmToLMin(flowGpm), 1, 'L/min')
}

/** Weight: whole lb or kg, one decimal below ten. */
export function formatWeightLb(weightLb: Shown, system: UnitSystem): string {
  if (!known(weightLb)) return NOT_KNOWN
  const value = system === 'us' ? weightLb : lbToKg(weightLb)
  return withUnit(value, Math.abs(value) < 10 ? 1 : 0, system === 'us' ? 'lb' : 'kg')
}

/** Temperature: whole °F or °C. */
export function formatTemperatureF(temperatureF: Shown, system: UnitSystem): string {
  if (!known(temperatureF)) return NOT_KNOWN
  return system === 'us' ? withUnit(temperatureF, 0, '°F') : withUnit(fToC(temperatureF), 0, '°C')
}

/** Pressure: psi or bar, one decimal below ten psi. */
export function formatPressurePsi(pressurePsi: Shown, system: UnitSystem): string {
  if (!known(pressurePsi)) return NOT_KNOWN
  if (system === 'us') return withUnit(pressurePsi, Math.abs(pressurePsi) < 10 ? 1 : 0, 'psi')
  return withUnit(convertPressure(pressurePsi, 'psi', 'bar'), 2, 'bar')
}

/** A small volume to measure out: fl oz (US) to one decimal, or whole mL. */
export function formatDoseFlOz(volumeFlOz: Shown, system: UnitSystem): string {
  if (!known(volumeFlOz)) return NOT_KNOWN
  return system === 'us' ? withUnit(volumeFlOz, 1, 'fl oz') : withUnit(convertVolume(volumeFlOz, 'floz', 'L') * 1000, 0, 'mL')
}

/** A share as a whole percentage: 0.28 → "28 %". */
export function formatPercent(share: Shown): string {
  return known(share) ? withUnit(share * 100, 0, '%') : NOT_KNOWN
}
