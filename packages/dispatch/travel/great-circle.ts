import { KM_PER_MILE } from '@almanac/units/distance'

/** A place on the earth in degrees north and east (WGS 84). */
export type Place = { readonly latitude: number; readonly longitude: number }

/** Mean radius of the earth: 6,371.0088 km (IUGG), in statute miles. */
export const EARTH_RADIUS_MILES = 6371.0088 / KM_PER_MILE

const radians = (degrees: number) => (degrees * Math.PI) / 180

/** True for numbers that can be a place. */
export function isPlace({ latitude, longitude }: Place): boolean {
  return Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180
}

/** Straight distance over the ground, statute miles, by the haversine formula; on a sphere, so within 0.6 % of the ellipsoid. */
export function straightMiles(from: Place, to: Place): number {
  const dLat = radians(to.latitude - from.latitude)
  const dLon = radians(to.longitude - from.longitude)
  const h = Math.sin(dLat / 2) ** 2 + Math.cos(radians(from.latitude)) * Math.cos(radians(to.latitude)) * Math.sin(dLon / 2) ** 2
  return 2 * EARTH_RADIUS_MILES * Math.asin(Math.min(1, Math.sqrt(h)))
}
