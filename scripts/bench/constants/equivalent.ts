/** Constants whose change nobody could notice, with the reason; they are named, and counted apart. `code` is the line they stand on. */
export type Equivalent = { file: string; code: string; value: number; why: string }

const ITERATION = 'the iteration has come to rest long before: more steps give the same answer'
const NEWTON = 'start and slope of a Newton iteration: it comes to rest at the same root, which the tests hold fast'
const HAIR = 'a dimension of a twentieth of an inch is left out of the drawing: a hair more or less looks the same'
const FINENESS =
  'how finely a sum over possible readings is cut, and how far out it goes: the tests hold the sum to a fine one, and this change moves it far less'

export const EQUIVALENT: readonly Equivalent[] = [
  {
    file: 'packages/softener/hydraulics/particle-velocity.ts',
    code: 'for (let step = 0; step < 60; step += 1) {',
    value: 60,
    why: ITERATION,
  },
  { file: 'packages/softener/tanks/tank-geometry.ts', code: 'for (let step = 0; step < 40; step += 1) {', value: 40, why: ITERATION },
  { file: 'packages/softener/hydraulics/particle-velocity.ts', code: 'let reynolds = drive / 18', value: 18, why: NEWTON },
  ...[18, 2.7, 1.687].map((value) => ({
    file: 'packages/softener/hydraulics/particle-velocity.ts',
    code: 'const next = reynolds - (18 * reynolds + 2.7 * reynolds * power - drive) / (18 + 2.7 * 1.687 * power)',
    value,
    why: NEWTON,
  })),
  ...['if (expansion && risesTo > levels.bedTopIn + 0.05) {', 'if (shell.crownIn > risesTo + 0.05) {'].map((code) => ({
    file: 'packages/softener/drawing/bed-dimensions.ts',
    code,
    value: 0.05,
    why: HAIR,
  })),
  ...(
    [
      ['identify/next-measure.ts', 'const BINS_PER_SD = 1.5', 1.5],
      ['identify/next-measure.ts', 'const MOST_BINS = 80', 80],
      ['identify/next-measure.ts', 'const low = Math.min(...expected.map((one) => one.low - 3 * one.sd))', 3],
      ['identify/next-measure.ts', 'const high = Math.max(...expected.map((one) => one.high + 3 * one.sd))', 3],
      ['identify/next-measure.ts', 'const middle = (bin: number) => low + ((bin + 0.5) * (high - low)) / count', 0.5],
    ] as const
  ).map(([file, code, value]) => ({ file: `packages/softener/${file}`, code, value, why: FINENESS })),
]
