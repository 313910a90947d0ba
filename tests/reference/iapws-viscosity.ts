/**
 * The full IAPWS R12-08 viscosity (without the critical enhancement), written out for the tests alone: an independent yardstick for the
 * compact form that the product uses. Coefficients from R12-08 Tables 1 and 2, from memory; Table 4 of the release checks them.
 */
const H0 = [1.67752, 2.20462, 0.6366564, -0.241605]
const H: readonly (readonly [i: number, j: number, h: number])[] = [
  [0, 0, 5.20094e-1],
  [1, 0, 8.50895e-2],
  [2, 0, -1.08374],
  [3, 0, -2.89555e-1],
  [0, 1, 2.22531e-1],
  [1, 1, 9.99115e-1],
  [2, 1, 1.88797],
  [3, 1, 1.26613],
  [5, 1, 1.20573e-1],
  [0, 2, -2.81378e-1],
  [1, 2, -9.06851e-1],
  [2, 2, -7.72479e-1],
  [3, 2, -4.89837e-1],
  [4, 2, -2.5704e-1],
  [0, 3, 1.61913e-1],
  [1, 3, 2.57399e-1],
  [0, 4, -3.25372e-2],
  [3, 4, 6.98452e-2],
  [4, 5, 8.72102e-3],
  [3, 6, -4.35673e-3],
  [5, 6, -5.93264e-4],
]

/** Viscosity in µPa·s at a temperature in K and a density in kg/m³. */
export function iapwsViscosity(temperatureK: number, densityKgM3: number): number {
  const t = temperatureK / 647.096
  const r = densityKgM3 / 322
  const dilute = (100 * Math.sqrt(t)) / H0.reduce((sum, h, i) => sum + h / t ** i, 0)
  const dense = H.reduce((sum, [i, j, h]) => sum + (1 / t - 1) ** i * h * (r - 1) ** j, 0)
  return dilute * Math.exp(r * dense)
}
