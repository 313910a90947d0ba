/** Degrees, WGS 84: latitude −90 to 90, longitude −180 to 180. */
export interface LatLon {
  readonly lat: number
  readonly lon: number
}

/** Mean Earth radius 6,371.0088 km (IUGG) in miles. */
const EARTH_RADIUS_MILES = 6371.0088 / 1.609344

/** Whether both numbers are there and on the globe; 0, 0 lies in the sea off Africa and is what an empty field becomes, so it counts as no point. */
export function isPoint(point: LatLon | null): point is LatLon {
  if (point === null) return false
  const { lat, lon } = point
  return Math.abs(lat) <= 90 && Math.abs(lon) <= 180 && !(lat === 0 && lon === 0)
}

/** Great-circle distance in miles (haversine formula; Sinnott 1984). */
export function greatCircleMiles(a: LatLon, b: LatLon): number {
  const rad = Math.PI / 180
  const sinLat = Math.sin(((b.lat - a.lat) * rad) / 2)
  const sinLon = Math.sin(((b.lon - a.lon) * rad) / 2)
  const h = sinLat * sinLat + Math.cos(a.lat * rad) * Math.cos(b.lat * rad) * sinLon * sinLon
  return 2 * EARTH_RADIUS_MILES * Math.asin(Math.min(1, Math.sqrt(h)))
}
