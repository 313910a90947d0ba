import { estimateLeg, UNCALIBRATED } from '@almanac/dispatch/travel/estimate-leg'
import type { FirmPlan } from './firms.ts'
import type { Rows } from './rows.ts'
import type { DemoDrives } from './sheets.ts'

/** Minutes for a drive to or from a site that nobody placed on the map. */
const UNKNOWN_MINUTES = 25
/** The longest that a rush hour makes a drive. */
const RUSH = Math.max(...UNCALIBRATED.rush.map((span) => span.factor))

/** The drives of an invented firm as the app estimates them, each as long as in a rush hour, so that booked days hold together. */
export function drivesBetween(sites: Rows['site'], firm: Pick<FirmPlan, 'yard'>): DemoDrives {
  const yard = { lat: firm.yard.latitude, lon: firm.yard.longitude }
  const at = new Map(sites.map(({ id, latitude, longitude }) => [id, { lat: latitude ?? Number.NaN, lon: longitude ?? Number.NaN }]))
  const place = (siteId: string | null) => (siteId === null ? yard : (at.get(siteId) ?? null))
  return (from, to) => {
    const { seconds } = estimateLeg(place(from), place(to), UNCALIBRATED)
    return seconds === null ? UNKNOWN_MINUTES : (seconds / 60) * RUSH
  }
}
