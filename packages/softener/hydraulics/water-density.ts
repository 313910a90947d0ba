/**
 * Density of air-free water at 101.325 kPa, kg/m³, for 0 to 100 °C: Kell, J. Chem. Eng. Data 20 (1975) 97; coefficients from memory,
 * they give 999.972 at 4 °C and 998.203 at 20 °C. Callers check the range first.
 */
export function waterDensityKgM3(temperatureC: number): number {
  const t = temperatureC
  const top = 999.83952 + t * (16.945176 + t * (-7.9870401e-3 + t * (-46.170461e-6 + t * (105.56302e-9 - 280.54253e-12 * t))))
  return top / (1 + 16.87985e-3 * t)
}
