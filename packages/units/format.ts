import type { AmountDisplay } from './display.ts'
import { gpmToLMin } from './flow.ts'
import { NOT_KNOWN, showEighths, showNumber, withUnit } from './format-number.ts'
import { gpgToMgL } from './hardness.ts'
import { inToMm } from './length.ts'
import { lbToKg } from './mass.ts'
import { convertPressure } from './pressure.ts'
import { fToC } from './temperature.ts'
import { convertVolume, ft3ToL, galToL } from './volume.ts'

/** A value that may be missing: shown as "not known", never as NaN. */
export type Shown = number | null | undefined

const known = (value: Shown): value is number => value !== null && value !== undefined && Number.isFinite(value)

/** Resin or tank volume: "1½ ft³" where the value is within 0.01 of an eighth, else decimals; metric "42 L". */
export function formatVolumeFt3(volumeFt3: Shown, display: AmountDisplay): string {
  if (!known(volumeFt3)) return NOT_KNOWN
  if (display.unitSystem === 'metric') return formatLitres(ft3ToL(volumeFt3), display)
  const eighths = Math.round(volumeFt3 * 8) / 8
  const asRule = eighths > 0 && Math.abs(eighths - volumeFt3) < 0.01
  return asRule ? `${showEighths(volumeFt3, display)} ft³` : withUnit(volumeFt3, 2, 'ft³', display)
}

function formatLitres(volumeL: number, display: AmountDisplay): string {
  return withUnit(volumeL, Math.abs(volumeL) < 10 ? 1 : 0, 'L', display)
}

/** Water: gallons or litres. */
export function formatWaterGal(volumeGal: Shown, display: AmountDisplay): string {
  if (!known(volumeGal)) return NOT_KNOWN
  return display.unitSystem === 'us'
    ? withUnit(volumeGal, Math.abs(volumeGal) < 20 ? 1 : 0, 'gal', display)
    : formatLitres(galToL(volumeGal), display)
}

/** A length as measured: nearest ⅛ in, or mm below 10 cm and cm above. */
export function formatLengthIn(lengthIn: Shown, display: AmountDisplay): string {
  if (!known(lengthIn)) return NOT_KNOWN
  if (display.unitSystem === 'us') return `${showEighths(lengthIn, display)} in`
  const mm = inToMm(lengthIn)
  return Math.abs(mm) < 100 ? withUnit(mm, 0, 'mm', display) : withUnit(mm / 10, 1, 'cm', display)
}

/** A length to cut to: nearest ⅛ in, or whole millimetres. */
export function formatCutLengthIn(lengthIn: Shown, display: AmountDisplay): string {
  if (!known(lengthIn)) return NOT_KNOWN
  return display.unitSystem === 'us' ? `${showEighths(lengthIn, display)} in` : withUnit(inToMm(lengthIn), 0, 'mm', display)
}

/** Tank size as written on labels: "10 × 54 in" or "25 × 137 cm". */
export function formatTankSize(diameterIn: Shown, heightIn: Shown, display: AmountDisplay): string {
  if (!known(diameterIn) || !known(heightIn)) return NOT_KNOWN
  const show = (lengthIn: number) =>
    display.unitSystem === 'us' ? showNumber(lengthIn, 1, display) : showNumber(inToMm(lengthIn) / 10, 0, display)
  return `${show(diameterIn)} × ${show(heightIn)} ${display.unitSystem === 'us' ? 'in' : 'cm'}`
}

/** Hardness: gpg to one decimal, or whole mg/L as CaCO₃. */
export function formatHardnessGpg(hardnessGpg: Shown, display: AmountDisplay): string {
  if (!known(hardnessGpg)) return NOT_KNOWN
  if (display.unitSystem === 'us') return withUnit(hardnessGpg, 1, 'gpg', display)
  const mgL = gpgToMgL(hardnessGpg)
  return withUnit(mgL, Math.abs(mgL) < 10 ? 1 : 0, 'mg/L', display)
}

/** Flow: gpm or L/min, one decimal. */
export function formatFlowGpm(flowGpm: Shown, display: AmountDisplay): string {
  if (!known(flowGpm)) return NOT_KNOWN
  return display.unitSystem === 'us' ? withUnit(flowGpm, 1, 'gpm', display) : withUnit(gpmToLMin(flowGpm), 1, 'L/min', display)
}

/** Weight: whole lb or kg, one decimal below ten. */
export function formatWeightLb(weightLb: Shown, display: AmountDisplay): string {
  if (!known(weightLb)) return NOT_KNOWN
  const value = display.unitSystem === 'us' ? weightLb : lbToKg(weightLb)
  return withUnit(value, Math.abs(value) < 10 ? 1 : 0, display.unitSystem === 'us' ? 'lb' : 'kg', display)
}

/** Temperature: whole °F or °C. */
export function formatTemperatureF(temperatureF: Shown, display: AmountDisplay): string {
  if (!known(temperatureF)) return NOT_KNOWN
  return display.unitSystem === 'us' ? withUnit(temperatureF, 0, '°F', display) : withUnit(fToC(temperatureF), 0, '°C', display)
}

/** Pressure: psi or bar, one decimal below ten psi. */
export function formatPressurePsi(pressurePsi: Shown, display: AmountDisplay): string {
  if (!known(pressurePsi)) return NOT_KNOWN
  if (display.unitSystem === 'us') return withUnit(pressurePsi, Math.abs(pressurePsi) < 10 ? 1 : 0, 'psi', display)
  return withUnit(convertPressure(pressurePsi, 'psi', 'bar'), 2, 'bar', display)
}

/** A small volume to measure out: fl oz (US) to one decimal, or whole mL. */
export function formatDoseFlOz(volumeFlOz: Shown, display: AmountDisplay): string {
  if (!known(volumeFlOz)) return NOT_KNOWN
  return display.unitSystem === 'us'
    ? withUnit(volumeFlOz, 1, 'fl oz', display)
    : withUnit(convertVolume(volumeFlOz, 'floz', 'L') * 1000, 0, 'mL', display)
}
