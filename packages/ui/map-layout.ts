/** Degrees north and east. */
export type MapPlace = { latitude: number; longitude: number }

export type MapFrame = {
  width: number
  height: number
  at: (place: MapPlace) => { x: number; y: number }
  /** What lies at a point of the sheet, to a hundred-thousandth of a degree: about a metre. */
  placeAt: (point: { x: number; y: number }) => MapPlace
  milesPerPixel: number
}

const fine = (degrees: number) => Math.round(degrees * 1e5) / 1e5

const MILES_PER_DEGREE = 69.0934
/** So little is never drawn larger: two doors apart would fill the sheet. */
const LEAST_MILES = 1.5

/**
 * Fits places into a box of a width, north up, true to scale: a degree east is drawn shorter by the cosine of the middle latitude, which is right to 0.1% over a
 * day's drives. The height follows from the places, within limits.
 */
export function fitMap(places: readonly MapPlace[], width: number, heights: { least: number; most: number }, margin: number): MapFrame {
  const lats = places.map((one) => one.latitude)
  const lons = places.map((one) => one.longitude)
  const [south, north] = [Math.min(...lats), Math.max(...lats)]
  const [west, east] = [Math.min(...lons), Math.max(...lons)]
  const middle = { latitude: (south + north) / 2, longitude: (west + east) / 2 }
  const shrink = Math.cos((middle.latitude * Math.PI) / 180)
  const milesWide = Math.max(LEAST_MILES, (east - west) * shrink * MILES_PER_DEGREE)
  const milesHigh = Math.max(LEAST_MILES, (north - south) * MILES_PER_DEGREE)
  const across = Math.max(1, width - 2 * margin)
  const height = Math.min(heights.most, Math.max(heights.least, (milesHigh / milesWide) * across + 2 * margin))
  const milesPerPixel = Math.max(milesWide / across, milesHigh / Math.max(1, height - 2 * margin))
  const at = ({ latitude, longitude }: MapPlace) => ({
    x: width / 2 + ((longitude - middle.longitude) * shrink * MILES_PER_DEGREE) / milesPerPixel,
    y: height / 2 - ((latitude - middle.latitude) * MILES_PER_DEGREE) / milesPerPixel,
  })
  const placeAt = ({ x, y }: { x: number; y: number }) => ({
    latitude: fine(middle.latitude + ((height / 2 - y) * milesPerPixel) / MILES_PER_DEGREE),
    longitude: fine(middle.longitude + ((x - width / 2) * milesPerPixel) / (MILES_PER_DEGREE * shrink)),
  })
  return { width, height, at, placeAt, milesPerPixel }
}

/** A round length for the scale bar, at most so many pixels long; in miles or kilometres. */
export function scaleBar(milesPerPixel: number, mostPixels: number, milesPerUnit: number): { length: number; pixels: number } {
  const most = (mostPixels * milesPerPixel) / milesPerUnit
  const power = 10 ** Math.floor(Math.log10(most))
  const length = [5, 2, 1].map((digit) => digit * power).find((one) => one <= most) ?? power
  return { length, pixels: (length * milesPerUnit) / milesPerPixel }
}

/** Moves labels that lie on each other apart, downwards, keeping their order; answers each label's y. */
export function spreadLabels(labels: readonly { x: number; y: number }[], apartX: number, apartY: number): number[] {
  const order = labels.map((_, n) => n).sort((a, b) => (labels[a]?.y ?? 0) - (labels[b]?.y ?? 0))
  const ys = labels.map((one) => one.y)
  order.forEach((n, rank) => {
    for (const other of order.slice(0, rank)) {
      const [mine, theirs] = [labels[n], labels[other]]
      if (!mine || !theirs || Math.abs(mine.x - theirs.x) > apartX) continue
      const least = (ys[other] ?? 0) + apartY
      if ((ys[n] ?? 0) < least) ys[n] = least
    }
  })
  return ys
}
