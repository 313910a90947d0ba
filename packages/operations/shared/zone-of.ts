import lookUp from '@photostructure/tz-lookup'

/** The time zone of a place by its coordinates (IANA name); null for one that is not on the map. */
export function zoneOf(place: { latitude: number | null; longitude: number | null } | null | undefined): string | null {
  if (place?.latitude == null || place.longitude == null) return null
  return lookUp(place.latitude, place.longitude)
}
