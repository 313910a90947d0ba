import type { DrivePace } from '@almanac/records/drive-pace'
import { formatPercent, type NumberDisplay, showWhole } from '@almanac/units/format-number'

/** A company's own pace beside usual speeds: "drives take 12% longer than usual, from 43 recorded drives". */
export function paceWords({ factor, drives }: Pick<DrivePace, 'factor' | 'drives'>, display: NumberDisplay): string {
  const off = Math.round((factor - 1) * 100)
  const compared =
    off === 0 ? 'as long as usual' : `${formatPercent(Math.abs(off) / 100, display)} ${off > 0 ? 'longer' : 'less time'} than usual`
  return `drives take ${compared}, from ${showWhole(drives, display)} recorded drives`
}
