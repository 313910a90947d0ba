import { mSToGpmFt2 } from '@almanac/units/flow'
import type { BedLevels } from '../tanks/bed-levels.ts'
import type { TankShell } from '../tanks/tank-geometry.ts'
import { type BedBeads, backwashFluxForExpansion, bedExpansion, type ExpansionModel } from './bed-expansion.ts'
import { terminalVelocity } from './particle-velocity.ts'
import { type WaterState, waterAt } from './water-state.ts'

/**
 * Share of the free volume over the bed that it may grow into; the rest is kept clear. Beads are graded, so the finest hang above the level
 * worked out for the mean bead, and correlations differ: at 5 gpm/ft² and 41 °F Wen and Yu give 58% where Richardson and Zaki give 45%. The
 * margin itself is an assumption, no source.
 */
export const SAFE_SHARE_OF_FREEBOARD = 0.85
/** Below this share of the wanted expansion, in the warmest water, a backwash hardly loosens the bed; an assumption, no source. */
export const WEAK_SHARE_OF_WANTED = 0.4

/** `lost`: the bed reaches the top of the tank. `near`: it comes into the margin. `weak`: even so it hardly rises in summer. */
export type BackwashVerdict = 'right' | 'near' | 'lost' | 'weak' | 'not-known'

/** What a backwash does at one temperature, °C; expansion as a share of the settled bed. */
export type BackwashEffect = { temperatureC: number; expansion: number; reachesTop: boolean }
export type SeasonBackwash = {
  temperatureC: number
  /** Flow that gives the wanted expansion, or as much of it as the freeboard takes, gpm. */
  rightGpm: number
  /** Flow at which the bed would reach the margin, gpm. */
  mostGpm: number
  installed: BackwashEffect | null
}

export type BackwashFigures = {
  wantedExpansion: number
  /** Growth that fills the tank to its crown, as a share of the settled bed. */
  freeVolumeShare: number
  /** Growth up to the margin. */
  safeExpansion: number
  winter: SeasonBackwash
  summer: SeasonBackwash
  /** One flow for the whole year: what summer wants, held to what winter allows and to the firm's range. */
  yearRoundGpm: number
  /** The largest flow control at hand up to it, or the smallest there is; null where none are listed. */
  controlGpm: number | null
  /** What `controlGpm`, or else `yearRoundGpm`, does. */
  advisedWinter: BackwashEffect
  advisedSummer: BackwashEffect
  verdict: BackwashVerdict
  /** Flow that carries off beads of the smallest size in the coldest water, gpm. */
  finesCarriedGpm: number
}

export type BackwashQuestion = {
  shell: TankShell
  levels: BedLevels
  beads: BedBeads
  smallestBeadM: number
  coldestC: number
  warmestC: number
  wantedExpansion: number
  /** Flows the firm sets, gpm/ft². */
  leastGpmFt2: number
  mostGpmFt2: number
  installedGpm: number | null
  /** Flow controls at hand, gpm, rising. */
  controlsGpm: readonly number[]
  model: ExpansionModel
}

/** Backwash in the coldest and the warmest water: what is right, what the installed flow does. All inputs checked before. */
export function backwashFigures(question: BackwashQuestion): BackwashFigures {
  const { shell, levels, beads, coldestC, warmestC, wantedExpansion, installedGpm, model } = question
  const { freeVolumeShare } = levels
  const safeExpansion = SAFE_SHARE_OF_FREEBOARD * freeVolumeShare
  const cold = waterAt(coldestC)
  const warm = warmestC === coldestC ? cold : waterAt(warmestC)
  const effect = (water: WaterState, gpm: number): BackwashEffect => {
    const expansion = bedExpansion(beads, water, gpm / shell.areaFt2, model)
    return { temperatureC: water.temperatureC, expansion, reachesTop: expansion >= freeVolumeShare }
  }
  const season = (water: WaterState): SeasonBackwash => {
    const mostGpm = shell.areaFt2 * backwashFluxForExpansion(beads, water, safeExpansion, model)
    const rightGpm =
      wantedExpansion < safeExpansion ? shell.areaFt2 * backwashFluxForExpansion(beads, water, wantedExpansion, model) : mostGpm
    return { temperatureC: water.temperatureC, rightGpm, mostGpm, installed: installedGpm === null ? null : effect(water, installedGpm) }
  }
  const winter = season(cold)
  const summer = season(warm)
  const held = Math.min(Math.max(summer.rightGpm, question.leastGpmFt2 * shell.areaFt2), question.mostGpmFt2 * shell.areaFt2)
  const yearRoundGpm = Math.min(held, winter.mostGpm)
  const controlGpm = largestUpTo(question.controlsGpm, yearRoundGpm)
  const advisedGpm = controlGpm ?? yearRoundGpm
  return {
    wantedExpansion,
    freeVolumeShare,
    safeExpansion,
    winter,
    summer,
    yearRoundGpm,
    controlGpm,
    advisedWinter: effect(cold, advisedGpm),
    advisedSummer: effect(warm, advisedGpm),
    verdict: verdictOn(winter.installed, summer.installed, safeExpansion, wantedExpansion),
    finesCarriedGpm: shell.areaFt2 * carriedFlux(beads, cold, question.smallestBeadM),
  }
}

/** Within this share a control counts as the flow asked for: they are no more exact. */
export const CONTROL_TOLERANCE = 0.05

function largestUpTo(controlsGpm: readonly number[], mostGpm: number): number | null {
  let best = controlsGpm[0] ?? null
  for (const control of controlsGpm) if (control <= mostGpm * (1 + CONTROL_TOLERANCE)) best = control
  return best
}

function verdictOn(winter: BackwashEffect | null, summer: BackwashEffect | null, safe: number, wanted: number): BackwashVerdict {
  if (winter === null || summer === null) return 'not-known'
  if (winter.reachesTop) return 'lost'
  if (winter.expansion > safe) return 'near'
  return summer.expansion < WEAK_SHARE_OF_WANTED * wanted ? 'weak' : 'right'
}

function carriedFlux(beads: BedBeads, water: WaterState, diameterM: number): number {
  return mSToGpmFt2(terminalVelocity(diameterM, beads.densityKgM3, water).velocityMS)
}
