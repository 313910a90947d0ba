/**
 * Dynamic viscosity of water at 0.1 MPa, Pa·s: the compact form of IAPWS R12-08, for 0 to 110 °C. The coefficients are from memory;
 * the result agrees with IAPWS R12-08 Table 4 at 298.15 K to five figures. Callers check the range first.
 */
export function waterViscosityPaS(temperatureC: number): number {
  const t = (temperatureC + 273.15) / 300
  return 1e-6 * (280.68 * t ** -1.9 + 511.45 * t ** -7.7 + 61.131 * t ** -19.6 + 0.45903 * t ** -40)
}
