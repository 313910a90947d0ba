/** Round values from nothing up to `most`, at most about so many: steps of 1, 2 or 5 of a power of ten. */
export function roundTicks(most: number, about: number): number[] {
  if (!(most > 0) || !Number.isFinite(most)) return [0]
  const rough = most / about
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = ([1, 2, 5, 10].find((times) => times * power >= rough * (1 - 1e-9)) ?? 10) * power
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step)
}
