import { isPlace, type Place, straightMiles } from './great-circle.ts'
import { type TravelModel, USUAL_TRAVEL } from './travel-model.ts'

/** A drive with where its figures come from; `unknown` where a place is not known: no figure is made up for it. */
export type Drive = { basis: 'estimated' | 'server'; minutes: number; miles: number } | { basis: 'unknown' }

export const DRIVE_UNKNOWN: Drive = { basis: 'unknown' }

/** Road ÷ straight distance at a straight distance, miles. */
export function circuity(miles: number, model: TravelModel = USUAL_TRAVEL): number {
  const share = Math.min(1, Math.max(0, (miles - model.localMiles) / (model.regionalMiles - model.localMiles)))
  return model.localCircuity + share * (model.regionalCircuity - model.localCircuity)
}

/** Minutes of a drive of so many road miles without rush hours: the ends at the town's speed, the rest at that of open roads. */
export function freeMinutes(roadMiles: number, model: TravelModel = USUAL_TRAVEL): number {
  if (!(roadMiles > 0)) return 0
  const town = Math.min(roadMiles, 2 * model.townMilesEachEnd)
  return model.stopMinutes + model.pace * 60 * (town / model.townMph + (roadMiles - town) / model.openMph)
}

/** How much slower it is at a minute of the day; 1 outside the rush hours. */
export function rushFactor(minuteOfDay: number, model: TravelModel = USUAL_TRAVEL): number {
  return model.rush.find((one) => minuteOfDay >= one.fromMinute && minuteOfDay < one.toMinute)?.factor ?? 1
}

/**
 * A drive worked out from coordinates alone. `minuteOfDay` is when it begins on the clock of the place; left out, no rush hour counts. Two sites at
 * one place are no drive at all. `unknown` where either place is not known or no place on earth.
 */
export function estimateDrive(from: Place | null, to: Place | null, minuteOfDay?: number, model: TravelModel = USUAL_TRAVEL): Drive {
  if (!from || !to || !isPlace(from) || !isPlace(to)) return DRIVE_UNKNOWN
  const straight = straightMiles(from, to)
  const miles = straight * circuity(straight, model)
  const factor = minuteOfDay === undefined ? 1 : rushFactor(minuteOfDay, model)
  return { basis: 'estimated', minutes: freeMinutes(miles, model) * factor, miles }
}
