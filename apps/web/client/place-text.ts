import { readDegrees } from '@almanac/service-rules/import/read-degrees'

export type Degrees = { latitude: number; longitude: number }

/** A place as typed and shown: "41.7106, -88.4215"; nothing where it is not known. */
export function placeWords(place: Degrees | null): string {
  return place ? `${place.latitude}, ${place.longitude}` : ''
}

/** Reads a typed place, with a blank, a comma or a semicolon between; empty means not known. */
export function readPlace(text: string): { ok: true; value: Degrees | null } | { ok: false; reason: string } {
  if (!text.trim()) return { ok: true, value: null }
  const parts = text.trim().split(/\s*[;,]\s+|\s*;\s*|,(?=\s*[-+]?\d+\.)|\s+(?=[-+\d])/)
  if (parts.length !== 2) return { ok: false, reason: 'Type the latitude, a comma and the longitude, as 41.7106, -88.4215.' }
  const latitude = readDegrees(parts[0] ?? '', 'latitude')
  if (!latitude.ok) return latitude
  const longitude = readDegrees(parts[1] ?? '', 'longitude')
  return longitude.ok ? { ok: true, value: { latitude: latitude.value, longitude: longitude.value } } : longitude
}
