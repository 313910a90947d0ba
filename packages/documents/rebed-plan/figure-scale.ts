/** Scales a drawing is made at, so that a rule can be laid on it. */
const SCALES = [4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60] as const
const POINTS_PER_INCH = 72

/** The largest usual scale 1 : n at which so many inches fit into so many points, and points per inch of tank at it. */
export function figureScale(widthIn: number, heightIn: number, widthPt: number, heightPt: number): { n: number; pointsPerIn: number } {
  const least = Math.max((widthIn * POINTS_PER_INCH) / widthPt, (heightIn * POINTS_PER_INCH) / heightPt)
  const n = SCALES.find((scale) => scale >= least) ?? Math.ceil(least)
  return { n, pointsPerIn: POINTS_PER_INCH / n }
}
