import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { type FirmVerdict, judgeFirm } from './judge-firm.ts'
import { numbers, simulateWorld, type World } from './simulate-world.ts'

export type WorldFigures = ReturnType<typeof figuresOf>

/** Softeners of a firm where nothing else is said; a tiny one has a dozen or two. */
const PLACES = 120

/** Judges `firms` firms of a world, each with a seed of its own. */
export function measureWorld(world: World, firms: number, seed: number, places: number | null): WorldFigures {
  const prior = tradePriors()
  const verdicts: FirmVerdict[] = []
  for (let firm = 0; firm < firms; firm++) {
    const random = numbers(Math.imul(seed, 0x9e3779b1) ^ Math.imul(firm + 1, 0x85ebca6b))
    const size = places ?? (world === 'tiny' ? 12 + Math.floor(14 * random()) : PLACES)
    const verdict = judgeFirm(simulateWorld(world, size, random), prior, random)
    if (verdict !== null) verdicts.push(verdict)
  }
  return figuresOf(verdicts)
}

function figuresOf(verdicts: readonly FirmVerdict[]) {
  const total = (of: (verdict: FirmVerdict) => number) => verdicts.reduce((sum, verdict) => sum + of(verdict), 0)
  const share = (of: (verdict: FirmVerdict) => boolean) => total((verdict) => Number(of(verdict))) / verdicts.length
  const windows = verdicts.map(({ inWindow, beds }) => inWindow / beds)
  const mean = windows.reduce((sum, one) => sum + one, 0) / windows.length
  const gain = (of: 'weibull' | 'kaplanMeier') => 100 * (1 - total(({ brier }) => brier.forecast) / total(({ brier }) => brier[of]))
  return {
    firms: verdicts.length,
    beds: total(({ beds }) => beds),
    windows: mean,
    windowsError: Math.sqrt(windows.reduce((sum, one) => sum + (one - mean) ** 2, 0) / Math.max(1, windows.length - 1) / windows.length),
    counts12: share(({ countHit }) => countHit[0]),
    counts24: share(({ countHit }) => countHit[1]),
    /** Standard error of a share of firms near 80 %. */
    countsError: Math.sqrt(0.16 / verdicts.length),
    ratio12: total(({ expected }) => expected[0]) / total(({ came }) => came[0]),
    ratio24: total(({ expected }) => expected[1]) / total(({ came }) => came[1]),
    overdueSaid: total(({ overdueSaid }) => overdueSaid) / verdicts.length,
    overdueTrue: total(({ overdueTrue }) => overdueTrue) / verdicts.length,
    overWeibull: gain('weibull'),
    overKaplanMeier: gain('kaplanMeier'),
  }
}
