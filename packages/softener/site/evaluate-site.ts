import { type Refusal, refuse } from '@almanac/units/result'
import { fToC } from '@almanac/units/temperature'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { DEMAND_CURVES, peakDemandGpm } from '../flow/demand-curves.ts'
import { fixtureUnits, usualFixtures } from '../flow/fixture-units.ts'
import { type FlowFigures, flowFigures } from '../flow/flow-figures.ts'
import { type BackwashFigures, backwashFigures } from '../hydraulics/backwash.ts'
import { beadsOf } from '../hydraulics/bed-expansion.ts'
import { waterAt } from '../hydraulics/water-state.ts'
import { type ResinKind, resinKindOr8 } from '../resin/resin-kinds.ts'
import type { CardSpeaking } from '../setting/card-types.ts'
import { type SettingFigures, settingFigures } from '../setting/setting-figures.ts'
import { type BedLevels, bedLevels } from '../tanks/bed-levels.ts'
import { fillForTank, type TankFill } from '../tanks/fill-for-tank.ts'
import { type TankShell, tankShell } from '../tanks/tank-geometry.ts'
import { type CompensatedHardness, compensatedHardness } from '../water/compensated-hardness.ts'
import { checkSite, HYDRAULIC_KEYS, SETTING_KEYS, TEMPERATURE_KEYS } from './check-site.ts'
import type { SiteInput } from './site-input.ts'
import { type SeasonTemperatures, seasonTemperatures } from './site-water.ts'

/** The filled tank; `shell` and `levels` are null where the tank's size is not known. */
export type FilledTank = { fill: TankFill; kind: ResinKind; shell: TankShell | null; levels: BedLevels | null }

/** All that is worked out of one softener, in numbers. A part that cannot be worked out says why in a sentence; the others stand. */
export type SiteEvaluation = {
  filled: FilledTank
  /** What had to be assumed of the fill, in sentences. */
  fillAssumptions: readonly string[]
  season: SeasonTemperatures
  fixtureUnits: number
  backwash: BackwashFigures | Refusal
  flow: FlowFigures | Refusal
  hardness: CompensatedHardness | Refusal
  setting: SettingFigures | Refusal
}

const NO_SEASON = seasonTemperatures(null, null, null)
const NO_UNITS = fixtureUnits(usualFixtures(null))
/** Depth of bed taken where the tank is not known, ft; only the backwash's water hangs on it. From memory, unverified. */
export const ASSUMED_BED_FT = 2.5

/**
 * Fill, backwash, flow and setting of one softener; its kit is `rebed-of-record`'s. Numbers first: sentences for people are made by `settingsCard` and the
 * screens from what stands here. Refuses as a whole only where not even the resin volume can be told.
 */
export function evaluateSite(input: SiteInput, figures: FirmFigures, speaking: CardSpeaking): SiteEvaluation | Refusal {
  const fill = fillForTank(input, speaking, figures.tanks)
  if (!fill.ok) return fill
  const { kind } = resinKindOr8(input.resinKind)
  const filled = fillTank(input, fill.value, kind)
  // What cannot be right is refused in the parts that need it; the figures shown beside them are then the assumed ones.
  const season = checkSite(input, TEMPERATURE_KEYS, speaking) ? NO_SEASON : seasonTemperatures(input.coldestF, input.warmestF, input.usualF)
  const wrong = checkSite(input, HYDRAULIC_KEYS, speaking)
  const units = wrong ? NO_UNITS : (input.fixtureUnits ?? fixtureUnits(usualFixtures(input.people)))
  const { shell, levels } = filled
  const hardness = compensatedHardness({ ...input, allowance: figures.allowance }, speaking)
  const noTank = refuse(speaking.card('noTank'))
  return {
    filled,
    fillAssumptions: fill.assumptions,
    season,
    fixtureUnits: units,
    backwash: wrong ?? (shell && levels ? backwashOf(input, shell, levels, kind, season, figures, speaking) : noTank),
    flow: wrong ?? (shell && levels ? flowOf(input, shell, levels, fill.value, kind, season, units) : noTank),
    hardness: hardness.ok ? hardness.value : hardness,
    setting: hardness.ok ? settingOf(input, filled, season, hardness.value, figures, speaking) : hardness,
  }
}

function fillTank(input: SiteInput, fill: TankFill, kind: ResinKind): FilledTank {
  if (input.diameterIn === null || input.heightIn === null) return { fill, kind, shell: null, levels: null }
  const shell = tankShell(input.diameterIn, input.heightIn)
  return { fill, kind, shell, levels: bedLevels(shell, fill.resinFt3, fill.gravelLb) }
}

function backwashOf(
  input: SiteInput,
  shell: TankShell,
  levels: BedLevels,
  kind: ResinKind,
  season: SeasonTemperatures,
  figures: FirmFigures,
  { card }: CardSpeaking,
): BackwashFigures | Refusal {
  if (!levels.fits) return refuse(card('doesNotFit'))
  return backwashFigures({
    shell,
    levels,
    beads: beadsOf(kind),
    smallestBeadM: kind.smallestBeadMm.value / 1000,
    coldestC: fToC(season.coldestF),
    warmestC: fToC(season.warmestF),
    wantedExpansion: figures.backwash.wantedExpansion,
    leastGpmFt2: figures.backwash.gpmFt2.min,
    mostGpmFt2: figures.backwash.gpmFt2.max,
    installedGpm: input.backwashGpm,
    controlsGpm: input.controlsGpm,
    model: input.expansionModel,
  })
}

function flowOf(
  input: SiteInput,
  shell: TankShell,
  levels: BedLevels,
  fill: TankFill,
  kind: ResinKind,
  season: SeasonTemperatures,
  units: number,
): FlowFigures {
  const bed = { resinFt3: fill.resinFt3, areaFt2: shell.areaFt2, depthIn: levels.bedDepthIn }
  const demandGpm = peakDemandGpm(units, DEMAND_CURVES[input.demandCurve])
  return flowFigures(beadsOf(kind), waterAt(fToC(season.coldestF)), bed, input.arrangement, demandGpm)
}

function settingOf(
  input: SiteInput,
  filled: FilledTank,
  season: SeasonTemperatures,
  hardness: CompensatedHardness,
  figures: FirmFigures,
  speaking: CardSpeaking,
): SettingFigures | Refusal {
  const wrong = checkSite(input, SETTING_KEYS, speaking)
  if (wrong) return wrong
  const { resinFt3 } = filled.fill
  const areaFt2 = filled.shell?.areaFt2 ?? resinFt3 / ASSUMED_BED_FT
  return settingFigures(
    {
      kind: filled.kind.id,
      resinFt3,
      arrangement: input.arrangement,
      ageYears: input.bedAgeYears,
      temperatureF: season.meanF,
      hardnessGpg: hardness.hardnessGpg,
      compensatedGpg: hardness.compensatedGpg,
      metalsMgL: (input.ironMgL ?? 0) + (input.manganeseMgL ?? 0),
      dissolvedSolidsMgL: input.dissolvedSolidsMgL,
      people: input.people,
      measuredGalDay: input.measuredGalDay,
      backwashGpm: input.backwashGpm ?? figures.backwash.gpmFt2.usual * areaFt2,
      byTimer: input.control === 'timer',
      refillGpm: input.refillGpm,
      salt: input.salt,
      mostLeakageMgL: input.mostLeakageMgL,
      wantedLbFt3: input.wantedLbFt3,
    },
    figures,
    speaking,
  )
}
