/** Where the invented towns lie: middles in degrees, and how far their sites are spread, miles. */
const TOWNS: Record<string, { latitude: number; longitude: number; spreadMiles: number }> = {
  Larkmoor: { latitude: 41.71, longitude: -88.42, spreadMiles: 3.2 },
  'Nether Lark': { latitude: 41.66, longitude: -88.47, spreadMiles: 1.6 },
  'Quarry End': { latitude: 41.75, longitude: -88.36, spreadMiles: 1.4 },
  Weirbridge: { latitude: 41.79, longitude: -88.53, spreadMiles: 2.4 },
  'Alder Rise': { latitude: 41.83, longitude: -88.45, spreadMiles: 1.5 },
  'Fordham Mill': { latitude: 41.74, longitude: -88.62, spreadMiles: 1.3 },
  'Kestrel Ridge': { latitude: 41.58, longitude: -88.36, spreadMiles: 1.8 },
  Pinehollow: { latitude: 41.6, longitude: -88.55, spreadMiles: 2 },
  Brackwater: { latitude: 52.36, longitude: -1.55, spreadMiles: 2.2 },
  Saltgate: { latitude: 52.43, longitude: -1.68, spreadMiles: 1.6 },
}

const MILES_PER_DEGREE = 69.09
/** Every so many sites have no coordinates on record, as in a real list. */
const WITHOUT = 23

/** A number in 0…1 from a whole one: places must not shift the other invented facts, so they draw nothing from the story's chance. */
function spread(n: number, salt: number): number {
  const x = Math.sin(n * 12.9898 + salt * 78.233) * 43758.5453
  return x - Math.floor(x)
}

/** Where site `n` of a town stands; null for the few whose place nobody wrote down. */
export function demoPlace(town: string, n: number): { latitude: number; longitude: number } | null {
  const middle = TOWNS[town]
  if (!middle || n % WITHOUT === 5) return null
  const miles = middle.spreadMiles * Math.sqrt(spread(n, 1))
  const angle = 2 * Math.PI * spread(n, 2)
  const north = (miles * Math.sin(angle)) / MILES_PER_DEGREE
  const east = (miles * Math.cos(angle)) / (MILES_PER_DEGREE * Math.cos((middle.latitude * Math.PI) / 180))
  const rounded = (degrees: number) => Math.round(degrees * 1e5) / 1e5
  return { latitude: rounded(middle.latitude + north), longitude: rounded(middle.longitude + east) }
}
