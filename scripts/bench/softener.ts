import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { SiteInput } from '@almanac/softener/site/site-input'
import { CARD, SPEAKING } from '../../tests/support/speaking.ts'

type Bench = { args: string[]; say: (line: string) => void }
const SITES = 20_000
const KITS = 2000

/** A stream of chance that is the same for the same seed (SplitMix32), from 0 to 1. */
function chance(seed: number): () => number {
  let state = seed | 0
  return () => {
    state = (state + 0x9e3779b9) | 0
    let z = state
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b)
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35)
    return ((z ^ (z >>> 16)) >>> 0) / 2 ** 32
  }
}

/** Softeners as a firm meets them: listed and unlisted tanks, well and poorly known records, all resins, salts, valves and arrangements. */
function madeSites(figures: FirmFigures, base: SiteInput, seed: number): SiteInput[] {
  const next = chance(seed)
  const between = (least: number, most: number) => least + (most - least) * next()
  const one = <T>(of: readonly T[]): T => of[Math.floor(next() * of.length)] as T
  const maybe = (share: number, value: number) => (next() < share ? value : null)
  return Array.from({ length: SITES }, () => {
    const listed = next() < 0.8
    const tank = one(figures.tanks)
    const diameterIn = listed ? tank.diameterIn : Math.round(between(6, 30))
    const coldestF = between(36, 60)
    return {
      ...base,
      diameterIn,
      heightIn: listed ? tank.heightIn : Math.round(diameterIn * between(2.4, 5.5)),
      resinFt3: listed ? maybe(0.6, tank.resinFt3.usual) : null,
      gravelLb: maybe(0.4, tank.gravelLb.usual),
      resinKind: one(['gel-8', 'gel-8', 'gel-10', 'fine-mesh', null] as const),
      arrangement: one(['single', 'single', 'single', 'twin-parallel', 'twin-alternating'] as const),
      bedAgeYears: maybe(0.7, between(0, 20)),
      oldTubeLengthIn: listed ? maybe(0.3, tank.heightIn - 1.5) : null,
      hardnessGpg: between(3, 60),
      ironMgL: maybe(0.5, between(0, 3)),
      manganeseMgL: maybe(0.3, between(0, 0.5)),
      dissolvedSolidsMgL: maybe(0.5, between(100, 2500)),
      coldestF,
      warmestF: coldestF + between(1, 30),
      usualF: null,
      people: maybe(0.8, Math.ceil(between(0, 8))),
      fixtureUnits: maybe(0.5, between(4, 60)),
      demandCurve: one(['ipc', 'nspc'] as const),
      expansionModel: one(['richardson-zaki', 'richardson-zaki', 'richardson-zaki', 'wen-yu'] as const),
      backwashGpm: maybe(0.7, between(1, 10)),
      controlsGpm: one(figures.valves).backwashGpm,
      control: one(['meter', 'meter', 'timer', null] as const),
      refillGpm: 0.5,
      salt: one(['NaCl', 'NaCl', 'NaCl', 'KCl'] as const),
    }
  })
}

/**
 * Full evaluations of one softener a second, on one core, in figures: fill, backwash in winter and summer, flow, every salt dose. The best of five rounds and all
 * of them are told; `--seed=7` for other sites. Beside them how many kits a second are made up, each with its sentences.
 */
export default async function softener({ args, say }: Bench) {
  const seed = Number(args.find((arg) => arg.startsWith('--seed='))?.slice(7) ?? 1)
  if (!Number.isInteger(seed)) throw new Error('--seed must be a whole number.')
  const { evaluateSite } = await import('@almanac/softener/site/evaluate-site')
  const { rebedKit } = await import('@almanac/softener/kit/rebed-kit')
  const { UNKNOWN_SITE } = await import('@almanac/softener/site/site-input')
  const { USUAL_FIGURES } = await import('@almanac/softener/firm/usual-figures')
  const figures = { ...USUAL_FIGURES, saltPriceMinorPerLb: 20, waterPriceMinorPerGal: 1 }
  const sites = madeSites(figures, UNKNOWN_SITE, seed)
  let refused = 0
  const round = () => {
    const began = performance.now()
    refused = 0
    for (const site of sites) {
      const found = evaluateSite(site, figures, CARD)
      if ('reason' in found || 'reason' in found.setting || 'reason' in found.flow || 'reason' in found.backwash) refused += 1
    }
    return (SITES / (performance.now() - began)) * 1000
  }
  round()
  const rounds = Array.from({ length: 5 }, round).map(Math.round)
  const perSecond = Math.max(...rounds)
  const kitsBegan = performance.now()
  for (const site of sites.slice(0, KITS)) rebedKit({ ...site, resinVolumeFt3: site.resinFt3, figures, ...SPEAKING })
  const kitsPerSecond = Math.round((KITS / (performance.now() - kitsBegan)) * 1000)
  say(`${SITES} made-up softeners (seed ${seed}), ${refused} of them with a part that is refused with a sentence`)
  say(`full evaluations a second on one core: ${rounds.join(', ')}; best ${perSecond}; target 100000`)
  say(`kits a second, with their sentences: ${kitsPerSecond}`)
  return { perSecond, kitsPerSecond, rounds, sites: SITES, refused, seed, target: 100_000 }
}
