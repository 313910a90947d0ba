import { formatFlowGpm, formatLengthIn, formatPressurePsi, formatTemperatureF, formatVolumeFt3 } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { CardLine, CardWords, WhyWords } from '../setting/card-types.ts'
import { isCommercial } from '../site/commercial.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import { AGED_DIAMETER_SHARE, AGED_VOIDAGE_LOSS } from './aged-bed.ts'
import { DEMAND_CURVES } from './demand-curves.ts'
import { MOST_DROP_PSI, PUBLIC_WORKS_BED_IN, PUBLIC_WORKS_GPM_FT2 } from './flow-figures.ts'

export type FlowWords = { summary: string; tone: 'good' | 'mind'; lines: CardLine[] }

/** What the house may draw at once against what the softener carries, clean and aged, in words; or the sentence for which it cannot be said. */
export function flowWords(
  evaluation: SiteEvaluation,
  input: SiteInput,
  { display, sources }: Pick<CardWords, 'display' | 'sources'>,
): FlowWords | Refusal {
  const { flow, filled, season } = evaluation
  if ('reason' in flow) return refuse(flow.reason)
  if (isCommercial(filled) && input.fixtureUnits === null)
    return refuse('This softener is larger than a house’s: a house’s peak says nothing of it. Count what uses water here, below.')
  const curve = DEMAND_CURVES[input.demandCurve]
  const gpm = (value: number) => formatFlowGpm(value, display)
  const each = flow.working === 2 ? ', half through each tank' : ''
  const beds: WhyWords['inputs'] = [
    {
      name: 'Resin',
      value: `${formatVolumeFt3(filled.fill.resinFt3, display)}${flow.working === 2 ? ' in each of two tanks' : ''}`,
      from: sources.resinFt3,
    },
    { name: 'Tanks', value: ARRANGED[input.arrangement] },
    { name: 'Bed depth', value: formatLengthIn(filled.levels?.bedDepthIn, display) },
    { name: 'Water at its coldest', value: formatTemperatureF(season.coldestF, display), from: sources.coldestF ?? sources.usualF },
  ]
  const demand: WhyWords['inputs'] = [
    {
      name: 'Fixture units',
      value: `${showNumber(evaluation.fixtureUnits, 1, display)} wsfu`,
      from: input.fixtureUnits === null ? 'usual for this many people' : sources.fixtureUnits,
    },
    { name: 'Curve', value: curve.label },
  ]
  const line = (
    id: string,
    label: string,
    value: string,
    hint: string | undefined,
    why: Pick<WhyWords, 'summary' | 'formula' | 'source'> & Partial<WhyWords>,
  ): CardLine => ({
    ...{ id, label, value, hint },
    why: { title: label, inputs: beds, assumptions: evaluation.fillAssumptions.slice(), missing: [], ...why },
  })
  const ergun = {
    summary: 'Water loses some pressure on its way through the bed; old, broken beads cost more.',
    formula: `Ergun: ΔP/L = 150 µu(1−ε)²/(ε³d²) + 1.75 ρu²(1−ε)/(ε³d), in the bed alone; valve and pipes come on top. An aged bed is assumed to have beads ${formatPercent(1 - AGED_DIAMETER_SHARE, display)} smaller and voids ${AGED_VOIDAGE_LOSS} less.`,
    source: 'Ergun 1952; viscosity IAPWS R12-08; the aged bed is an assumption, no source: a measured drop counts first',
    inputs: [...beds, ...demand],
  }
  const { dropAtDemand, dropAtCarried, at15Psi } = flow
  return {
    summary: `${input.people === null && input.fixtureUnits === null ? 'Who lives here isn’t recorded: a house of four is assumed. ' : ''}${SUMMARY[flow.verdict](gpm(flow.demandGpm), gpm(flow.carriesGpm))}`,
    tone: flow.verdict === 'far-short' ? 'mind' : 'good',
    lines: [
      line('demand', 'Home, at its peak', gpm(flow.demandGpm), each.slice(2) || undefined, {
        summary: 'This is the most water the home is likely to use at one moment.',
        formula: 'Fixture units of everything that uses water, then the peak likely to run at the same time by the code’s curve.',
        source: `IPC 2018 Table E103.3(2); ${curve.source}. Codes differ for small homes: by the two curves here 10 units mean 14.6 or 8 gpm.`,
        inputs: demand,
        assumptions:
          input.fixtureUnits === null
            ? ['Fixtures not counted: a bathroom for every two people, kitchen sink, dishwasher and clothes washer.']
            : [],
        missing: input.fixtureUnits === null ? ['what uses water in the home'] : [],
      }),
      line(
        'carries',
        'Softener carries',
        gpm(flow.carriesGpm),
        `at least ${gpm(flow.leastGpm)}, or water takes a shortcut through the bed`,
        {
          summary: 'This is the most water the bed can soften well at one moment.',
          formula: '40 bed volumes an hour (5 gpm/ft³) of resin at work; 8 at the least (1 gpm/ft³).',
          source: 'Davis, Water and Wastewater Engineering, 2010, Table 8-2',
        },
      ),
      line(
        'contact',
        'Water stays in the bed',
        flow.contactSeconds === null ? 'no flow' : `${showNumber(flow.contactSeconds, 0, display)} s`,
        `${showNumber(flow.bedVolumesH, 0, display)} bed volumes an hour at the peak`,
        {
          summary: 'The longer water stays in the bed, the softer it comes out.',
          formula: 'Empty-bed contact time = volume of resin ÷ flow: 448.8 s at 1 gpm/ft³, 89.8 s at 5.',
          source: 'derived; limits Davis 2010',
          inputs: [...beds, ...demand],
        },
      ),
      line(
        'drop-clean',
        'Pressure lost in a clean bed',
        formatPressurePsi(dropAtDemand.clean, display),
        `${formatPressurePsi(dropAtCarried.clean, display)} at what it carries`,
        ergun,
      ),
      line(
        'drop-aged',
        'In an aged bed',
        formatPressurePsi(dropAtDemand.aged, display),
        `${formatPressurePsi(dropAtCarried.aged, display)} at what it carries`,
        ergun,
      ),
      line(
        'at-15-psi',
        `Bed loses ${formatPressurePsi(MOST_DROP_PSI, display)} at`,
        `${gpm(at15Psi.clean)} clean, ${gpm(at15Psi.aged)} aged`,
        'the most for a whole unit at rated flow',
        {
          ...ergun,
          summary: 'At this flow the bed alone costs as much pressure as a whole unit may.',
          source: `${ergun.source}; at most 15 psi at rated service flow: NSF/ANSI 44`,
        },
      ),
      line('public-works', 'By public works rules', publicWords(flow.withinPublicWorks), 'stricter than a home needs', {
        summary: 'Rules for town water plants keep the water slow and the bed deep.',
        formula: `At most ${PUBLIC_WORKS_GPM_FT2} gpm/ft² (here ${showNumber(flow.gpmFt2, 1, display)}) through a bed of at least ${PUBLIC_WORKS_BED_IN / 12} ft (here ${showNumber((filled.levels?.bedDepthIn ?? 0) / 12, 1, display)}).`,
        source: 'Ten States Standards §4.4.2; Virginia 12 VAC 5-590-900',
      }),
    ],
  }
}

const ARRANGED = {
  single: 'one tank',
  'twin-parallel': 'two tanks together, each with half the flow',
  'twin-alternating': 'two tanks in turn, one at a time with all the flow',
} as const

const SUMMARY = {
  carries: (demand: string, carries: string) => `The softener carries ${carries}; the home uses ${demand} at its peak. It’s large enough.`,
  short: (demand: string, carries: string) =>
    `At a peak the home may use ${demand}, but the softener carries ${carries} for long. In those minutes some hardness can get through.`,
  'far-short': (demand: string, carries: string) =>
    `The home may use ${demand} at its peak, far more than the ${carries} the softener carries. Then hard water gets through and pressure drops. Try the other curve, count what uses water, or consider a larger unit.`,
}

function publicWords({ flux, depth }: { flux: boolean; depth: boolean }): string {
  if (flux && depth) return 'within both limits'
  if (!flux && !depth) return 'too fast, and the bed too shallow'
  return flux ? 'bed shallower than 3 ft' : 'faster than 7 gpm/ft²'
}
