import { resinKindWords } from '@almanac/records/resin-kind'
import type { AmountDisplay } from '@almanac/units/display'
import { formatFlowGpm, formatLengthIn, formatTemperatureF } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { cToF } from '@almanac/units/temperature'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { CardLine, CardWords, WhyWords } from '../setting/card-types.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import { SEASON_SWING_F } from '../site/site-water.ts'
import { type BackwashEffect, type BackwashFigures, SAFE_SHARE_OF_FREEBOARD, type SeasonBackwash } from './backwash.ts'
import { beadsOf, bedExpansion } from './bed-expansion.ts'
import { waterAt } from './water-state.ts'

export type BackwashWords = {
  /** What is to be said of the installed backwash, in a sentence or two. */
  summary: string
  /** `lost` warns of resin in the drain. */
  tone: 'good' | 'mind' | 'danger'
  lines: CardLine[]
  notes: string[]
}

const MODEL_WORDS = { 'richardson-zaki': 'Richardson and Zaki 1954', 'wen-yu': 'Wen and Yu 1966' } as const

/** The backwash in words, for winter and summer; or the sentence for which nothing can be said. */
export function backwashWords(
  evaluation: SiteEvaluation,
  input: SiteInput,
  figures: FirmFigures,
  words: Pick<CardWords, 'display' | 'sources'>,
): BackwashWords | Refusal {
  const { backwash } = evaluation
  if ('reason' in backwash) return refuse(backwash.reason)
  const { levels } = evaluation.filled
  const { display } = words
  const why = whyFor(evaluation, input, figures, words)
  const gpm = (value: number) => formatFlowGpm(value, display)
  const season = (id: string, name: string, at: SeasonBackwash): CardLine[] => [
    {
      id: `${id}-right`,
      label: `Right for ${name}, ${formatTemperatureF(cToF(at.temperatureC), display)}`,
      value: gpm(at.rightGpm),
      hint: `expands the bed ${formatPercent(Math.min(backwash.wantedExpansion, backwash.safeExpansion), display)}; most ${gpm(at.mostGpm)}`,
      why: why(
        `Right backwash in ${name}`,
        'This flow lifts the bed enough to clean it without washing resin out.',
        'The flow at which the bed expands as wanted, or as far as the margin under the top of the tank, whichever is less.',
      ),
    },
    ...(at.installed
      ? [
          {
            id: `${id}-installed`,
            label: `With the fitted flow control, in ${name}`,
            value: effectWords(at.installed, display),
            why: why(
              `The fitted backwash in ${name}`,
              'This is how far the flow control in the valve lifts the bed.',
              'Expansion = (1 − voids packed) ÷ (1 − voids in the flow) − 1, at the flow over the tank’s cross-section.',
            ),
          },
        ]
      : []),
  ]
  return {
    ...verdictWords(backwash, input, gpm, display, input.backwashGpm === null ? null : byBoth(evaluation, backwash, input.backwashGpm)),
    lines: [
      {
        id: 'freeboard',
        label: 'Freeboard',
        value: `${formatLengthIn(levels?.freeboardIn, display)}, room for ${formatPercent(backwash.freeVolumeShare, display)}`,
        hint: 'from the top of the settled bed to the highest point inside',
        why: why(
          'Freeboard',
          'Freeboard is the empty space above the bed; the bed rises into it in backwash.',
          'Height from the settled bed to the highest point inside the tank, under the neck. The share is the space above gravel and resin, divided by the resin volume: the bed can grow by that much, dished top included.',
        ),
      },
      ...season('winter', 'winter', backwash.winter),
      ...season('summer', 'summer', backwash.summer),
      {
        id: 'year-round',
        label: 'One flow control for the whole year',
        value: gpm(backwash.controlGpm ?? backwash.yearRoundGpm),
        hint: `winter ${effectWords(backwash.advisedWinter, display)}, summer ${effectWords(backwash.advisedSummer, display)}`,
        why: why(
          'One flow for the whole year',
          'This flow cleans the bed in summer and loses no resin in winter.',
          `What summer needs (${gpm(backwash.summer.rightGpm)}), limited to what winter allows (${gpm(backwash.winter.mostGpm)}) and to your company’s ${figures.backwash.gpmFt2.min} to ${figures.backwash.gpmFt2.max} gpm/ft²; then the largest flow control of this valve up to it.`,
        ),
      },
    ],
    notes: [
      ...formulasDiffer(evaluation, input, backwash, gpm, display),
      ...(backwash.wantedExpansion > backwash.safeExpansion
        ? [
            `This tank has no room for the ${formatPercent(backwash.wantedExpansion, display)} expansion usually wanted (common practice): ${formatPercent(backwash.safeExpansion, display)} is the most. Backwash longer instead of harder.`,
          ]
        : []),
      ...(input.backwashGpm !== null && input.backwashGpm >= backwash.finesCarriedGpm
        ? [`In winter the smallest beads go to the drain from ${gpm(backwash.finesCarriedGpm)} up, whatever the freeboard.`]
        : []),
    ],
  }
}

/** Formulas closer than this are not worth a word, as a share of the settled bed. */
const WORTH_A_WORD = 0.03

/** How far a flow lifts the bed in winter by each formula; null where the tank is not known. */
function byBoth({ filled }: SiteEvaluation, { winter }: BackwashFigures, flowGpm: number) {
  if (filled.shell === null) return null
  const flux = flowGpm / filled.shell.areaFt2
  const by = (model: SiteInput['expansionModel']) => bedExpansion(beadsOf(filled.kind), waterAt(winter.temperatureC), flux, model)
  return { careful: by('wen-yu'), other: by('richardson-zaki') }
}

/** Where the two formulas disagree, by how much, and which one counts. */
function formulasDiffer(
  evaluation: SiteEvaluation,
  input: SiteInput,
  backwash: BackwashFigures,
  gpm: (value: number) => string,
  display: AmountDisplay,
): string[] {
  const flow = input.backwashGpm ?? backwash.controlGpm ?? backwash.yearRoundGpm
  const both = byBoth(evaluation, backwash, flow)
  if (both === null || Math.abs(both.careful - both.other) < WORTH_A_WORD) return []
  const shown = (share: number) => formatPercent(share, display)
  const counts = input.expansionModel === 'wen-yu' ? 'The careful one counts here.' : 'You chose the second one.'
  return [
    `Formulas differ: at ${gpm(flow)} in winter the bed grows ${shown(both.careful)} by ${MODEL_WORDS['wen-yu']}, ${shown(both.other)} by ${MODEL_WORDS['richardson-zaki']}. ${counts}`,
  ]
}

function effectWords({ expansion, reachesTop }: BackwashEffect, display: AmountDisplay): string {
  if (reachesTop) return 'to the top of the tank'
  return expansion < 0.005 ? 'bed not lifted' : `${formatPercent(expansion, display)} expansion`
}

function verdictWords(
  { verdict, winter, summer, controlGpm, yearRoundGpm, freeVolumeShare }: BackwashFigures,
  input: SiteInput,
  gpm: (value: number) => string,
  display: AmountDisplay,
  both: { careful: number; other: number } | null,
): Pick<BackwashWords, 'summary' | 'tone'> {
  const fitted = input.backwashGpm === null ? '' : gpm(input.backwashGpm)
  const better = gpm(controlGpm ?? yearRoundGpm)
  const cold = winter.installed ? effectWords(winter.installed, display) : ''
  const warm = summer.installed ? effectWords(summer.installed, display) : ''
  switch (verdict) {
    case 'lost':
      if (both && both.other < freeVolumeShare)
        return {
          summary: `At ${fitted} the bed may reach the top of the tank in winter, and some resin may be lost. Watch the drain, or fit about ${better}.`,
          tone: 'mind',
        }
      return {
        summary: `At ${fitted} the bed rises to the top of the tank in winter, and resin goes to the drain. Fit a flow control of about ${better}.`,
        tone: 'danger',
      }
    case 'near':
      return {
        summary: `At ${fitted} the bed comes close to the top of the tank in winter (${cold}): some resin may be lost. A flow control of about ${better} is safe.`,
        tone: 'mind',
      }
    case 'weak':
      return {
        summary: `At ${fitted} the bed hardly rises in summer (${warm}): dirt stays in it. About ${better} would be better.`,
        tone: 'mind',
      }
    case 'right':
      return { summary: `${fitted} suits this tank: ${cold} in winter, ${warm} in summer.`, tone: 'good' }
    default:
      return { summary: `The flow control in the valve is not recorded. About ${better} would suit this tank.`, tone: 'mind' }
  }
}

function whyFor(
  evaluation: SiteEvaluation,
  input: SiteInput,
  figures: FirmFigures,
  { display, sources }: Pick<CardWords, 'display' | 'sources'>,
): (title: string, summary: string, formula: string) => WhyWords {
  const { season, filled } = evaluation
  const { kind, fill } = filled
  const shared = {
    inputs: [
      {
        name: 'Tank',
        value: filled.shell ? `${filled.shell.diameterIn} × ${filled.shell.heightIn} in` : 'not known',
        from: sources.diameterIn,
      },
      { name: 'Resin', value: `${showNumber(fill.resinFt3, 2, display)} ft³, ${resinKindWords[kind.id]}`, from: sources.resinFt3 },
      { name: 'Gravel', value: `${showNumber(fill.gravelLb, 0, display)} lb`, from: sources.gravelLb },
      {
        name: 'Beads',
        value: `${kind.meanDiameterMm.value} mm, ${kind.particleDensityKgM3.value} kg/m³, ${kind.packedVoidage.value} voids packed`,
      },
      { name: 'Coldest water', value: formatTemperatureF(season.coldestF, display), from: sources.coldestF ?? sources.usualF },
      { name: 'Warmest water', value: formatTemperatureF(season.warmestF, display), from: sources.warmestF ?? sources.usualF },
      { name: 'Flow control', value: formatFlowGpm(input.backwashGpm, display), from: sources.backwashGpm },
      { name: 'Expansion wanted', value: formatPercent(figures.backwash.wantedExpansion, display) },
    ],
    assumptions: [
      ...evaluation.fillAssumptions,
      ...(season.assumed === 'none'
        ? []
        : [
            `Winter and summer temperatures are not both known: assumed ${SEASON_SWING_F} °F below and above the usual temperature, 60 °F if none is known (from memory).`,
          ]),
      `A margin of ${formatPercent(1 - SAFE_SHARE_OF_FREEBOARD, display)} of the room is kept under the top: fine beads rise higher than average, and formulas differ by a few points.`,
      'The distributor’s upper basket is left out.',
    ],
    missing: [
      ...(season.assumed === 'none' ? [] : ['water temperature in winter and in summer']),
      ...(input.backwashGpm === null ? ['flow control in the valve'] : []),
    ],
    source: `${MODEL_WORDS[input.expansionModel]}; drag by Schiller and Naumann 1935; viscosity IAPWS R12-08; expansion wanted and flows: ${COMMON_PRACTICE}, 6 to 8 gpm/ft² Ten States Standards §4.4.2`,
  }
  return (title, summary, formula) => ({ title, summary, formula, ...shared })
}
