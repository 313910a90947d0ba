import { formatFlowGpm, formatLengthIn, formatTemperatureF } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
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

/** The backwash in words, for winter and summer; or the sentence for which nothing can be said. */
export function backwashWords(
  evaluation: SiteEvaluation,
  input: SiteInput,
  figures: FirmFigures,
  words: CardWords,
): BackwashWords | Refusal {
  const { backwash } = evaluation
  if ('reason' in backwash) return refuse(backwash.reason)
  const { levels } = evaluation.filled
  const { display, card, why } = words
  const asked = askedOf(evaluation, input, figures, words)
  const gpm = (value: number) => formatFlowGpm(value, display)
  const share = (value: number) => formatPercent(value, display)
  const effect = effectIn(words)
  const season = (id: 'winter' | 'summer', at: SeasonBackwash): CardLine[] => [
    {
      id: `${id}-right`,
      label: card(`right/${id}`, { temperature: formatTemperatureF(cToF(at.temperatureC), display) }),
      value: gpm(at.rightGpm),
      hint: card('rightHint', { share: share(Math.min(backwash.wantedExpansion, backwash.safeExpansion)), flow: gpm(at.mostGpm) }),
      why: asked(why(`right/${id}`), why('right/sum'), why('right/how')),
    },
    ...(at.installed
      ? [
          {
            id: `${id}-installed`,
            label: card(`fitted/${id}`),
            value: effect(at.installed),
            why: asked(why(`fitted/${id}`), why('fitted/sum'), why('fitted/how')),
          },
        ]
      : []),
  ]
  const { min, max } = figures.backwash.gpmFt2
  return {
    ...verdictWords(backwash, input, words, input.backwashGpm === null ? null : byBoth(evaluation, backwash, input.backwashGpm)),
    lines: [
      {
        id: 'freeboard',
        label: card('freeboard'),
        value: card('freeboardRoom', { length: formatLengthIn(levels?.freeboardIn, display), share: share(backwash.freeVolumeShare) }),
        hint: card('freeboardHint'),
        why: asked(why('freeboard'), why('freeboard/sum'), why('freeboard/how')),
      },
      ...season('winter', backwash.winter),
      ...season('summer', backwash.summer),
      {
        id: 'year-round',
        label: card('yearRound'),
        value: gpm(backwash.controlGpm ?? backwash.yearRoundGpm),
        hint: card('yearRoundHint', { winter: effect(backwash.advisedWinter), summer: effect(backwash.advisedSummer) }),
        why: asked(
          why('yearRound'),
          why('yearRound/sum'),
          why('yearRound/how', {
            ...{ summer: gpm(backwash.summer.rightGpm), winter: gpm(backwash.winter.mostGpm) },
            ...{ least: String(min), most: String(max) },
          }),
        ),
      },
    ],
    notes: [
      ...formulasDiffer(evaluation, input, backwash, words),
      ...(backwash.wantedExpansion > backwash.safeExpansion
        ? [card('noRoom', { wanted: share(backwash.wantedExpansion), most: share(backwash.safeExpansion) })]
        : []),
      ...(input.backwashGpm !== null && input.backwashGpm >= backwash.finesCarriedGpm
        ? [card('finesCarried', { flow: gpm(backwash.finesCarriedGpm) })]
        : []),
    ],
  }
}

type Said = Pick<CardWords, 'display' | 'card'>

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
function formulasDiffer(evaluation: SiteEvaluation, input: SiteInput, backwash: BackwashFigures, { display, card }: Said): string[] {
  const flow = input.backwashGpm ?? backwash.controlGpm ?? backwash.yearRoundGpm
  const both = byBoth(evaluation, backwash, flow)
  if (both === null || Math.abs(both.careful - both.other) < WORTH_A_WORD) return []
  const shares = { careful: formatPercent(both.careful, display), other: formatPercent(both.other, display) }
  return [card(input.expansionModel === 'wen-yu' ? 'formulasDiffer' : 'formulasChosen', { flow: formatFlowGpm(flow, display), ...shares })]
}

const effectIn =
  ({ display, card }: Said) =>
  ({ expansion, reachesTop }: BackwashEffect): string => {
    if (reachesTop) return card('toTop')
    return expansion < 0.005 ? card('notLifted') : card('expansion', { share: formatPercent(expansion, display) })
  }

function verdictWords(
  { verdict, winter, summer, controlGpm, yearRoundGpm, freeVolumeShare }: BackwashFigures,
  input: SiteInput,
  said: Said,
  both: { careful: number; other: number } | null,
): Pick<BackwashWords, 'summary' | 'tone'> {
  const { card, display } = said
  const effect = effectIn(said)
  const flow = input.backwashGpm === null ? '' : formatFlowGpm(input.backwashGpm, display)
  const better = formatFlowGpm(controlGpm ?? yearRoundGpm, display)
  const cold = winter.installed ? effect(winter.installed) : ''
  const warm = summer.installed ? effect(summer.installed) : ''
  switch (verdict) {
    case 'lost':
      // Where one formula alone says so, it may be lost.
      if (both && both.other < freeVolumeShare) return { summary: card('bed/mayBeLost', { flow, better }), tone: 'mind' }
      return { summary: card('bed/lost', { flow, better }), tone: 'danger' }
    case 'near':
      return { summary: card('bed/near', { flow, winter: cold, better }), tone: 'mind' }
    case 'weak':
      return { summary: card('bed/weak', { flow, summer: warm, better }), tone: 'mind' }
    case 'right':
      return { summary: card('bed/right', { flow, winter: cold, summer: warm }), tone: 'good' }
    default:
      return { summary: card('bed/unknown', { better }), tone: 'mind' }
  }
}

function askedOf(
  evaluation: SiteEvaluation,
  input: SiteInput,
  figures: FirmFigures,
  { display, sources, why, kinds }: CardWords,
): (title: string, summary: string, formula: string) => WhyWords {
  const { season, filled } = evaluation
  const { kind, fill } = filled
  const beads = {
    ...{ diameter: String(kind.meanDiameterMm.value), density: String(kind.particleDensityKgM3.value) },
    voids: String(kind.packedVoidage.value),
  }
  const resin = { volume: showNumber(fill.resinFt3, 2, display) ?? '', kind: kinds(kind.id) }
  const shared = {
    inputs: [
      {
        name: why('in/tank'),
        value: filled.shell ? `${filled.shell.diameterIn} × ${filled.shell.heightIn} in` : why('notKnown'),
        from: sources.diameterIn,
      },
      { name: why('in/resin'), value: why('in/resinAndKind', resin), from: sources.resinFt3 },
      { name: why('in/gravel'), value: `${showNumber(fill.gravelLb, 0, display)} lb`, from: sources.gravelLb },
      { name: why('in/beads'), value: why('in/beadFigures', beads) },
      { name: why('in/coldest'), value: formatTemperatureF(season.coldestF, display), from: sources.coldestF ?? sources.usualF },
      { name: why('in/warmest'), value: formatTemperatureF(season.warmestF, display), from: sources.warmestF ?? sources.usualF },
      { name: why('in/control'), value: formatFlowGpm(input.backwashGpm, display), from: sources.backwashGpm },
      { name: why('in/expansion'), value: formatPercent(figures.backwash.wantedExpansion, display) },
    ],
    assumptions: [
      ...evaluation.fillAssumptions,
      ...(season.assumed === 'none' ? [] : [why('assumed/season', { swing: String(SEASON_SWING_F) })]),
      why('assumed/margin', { share: formatPercent(1 - SAFE_SHARE_OF_FREEBOARD, display) }),
      why('assumed/basket'),
    ],
    missing: [
      ...(season.assumed === 'none' ? [] : [why('missing/temperature')]),
      ...(input.backwashGpm === null ? [why('missing/control')] : []),
    ],
    source: why('bed/source', { model: why(`model/${input.expansionModel}`) }),
  }
  return (title, summary, formula) => ({ title, summary, formula, ...shared })
}
