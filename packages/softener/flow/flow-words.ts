import { formatFlowGpm, formatLengthIn, formatPressurePsi, formatTemperatureF, formatVolumeFt3 } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { CardLine, CardWords, WhyWords } from '../setting/card-types.ts'
import { PUBLIC_SOURCE } from '../setting/standards.ts'
import { isCommercial } from '../site/commercial.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import { AGED_DIAMETER_SHARE, AGED_VOIDAGE_LOSS } from './aged-bed.ts'
import { MOST_DROP_PSI, PUBLIC_WORKS_BED_IN, PUBLIC_WORKS_GPM_FT2 } from './flow-figures.ts'

export type FlowWords = { summary: string; tone: 'good' | 'mind'; lines: CardLine[] }

/** What the house may draw at once against what the softener carries, clean and aged, in words; or the sentence for which it cannot be said. */
export function flowWords(evaluation: SiteEvaluation, input: SiteInput, words: CardWords): FlowWords | Refusal {
  const { flow, filled } = evaluation
  const { display, card, why } = words
  if ('reason' in flow) return refuse(flow.reason)
  if (isCommercial(filled) && input.fixtureUnits === null) return refuse(card('commercialPeak'))
  const gpm = (value: number) => formatFlowGpm(value, display)
  const psi = (value: number) => formatPressurePsi(value, display)
  const number = (value: number, digits: number) => showNumber(value, digits, display) ?? ''
  const { beds, demand } = inputsOf(evaluation, input, words)
  const line = (
    id: string,
    label: string,
    value: string,
    hint: string | undefined,
    asked: Pick<WhyWords, 'summary' | 'formula' | 'source'> & Partial<WhyWords>,
  ): CardLine => ({
    ...{ id, label, value, hint },
    why: { title: label, inputs: beds, assumptions: evaluation.fillAssumptions.slice(), missing: [], ...asked },
  })
  const drop = {
    summary: why('drop/sum'),
    formula: why('drop/how', { smaller: formatPercent(1 - AGED_DIAMETER_SHARE, display), voids: String(AGED_VOIDAGE_LOSS) }),
    source: why('drop/source'),
    inputs: [...beds, ...demand],
  }
  const { dropAtDemand, dropAtCarried, at15Psi } = flow
  const said = card(`flow/${flow.verdict}`, { demand: gpm(flow.demandGpm), carries: gpm(flow.carriesGpm) })
  const isCounted = input.fixtureUnits !== null
  return {
    summary: input.people === null && !isCounted ? card('ofFour', { said }) : said,
    tone: flow.verdict === 'far-short' ? 'mind' : 'good',
    lines: [
      line('demand', card('demand'), gpm(flow.demandGpm), flow.working === 2 ? card('halfEach') : undefined, {
        summary: why('demand/sum'),
        formula: why('demand/how'),
        source: why('demand/source', { curve: why(`curve/${input.demandCurve}`) }),
        inputs: demand,
        assumptions: isCounted ? [] : [why('assumed/fixtures')],
        missing: isCounted ? [] : [why('missing/fixtures')],
      }),
      line('carries', card('carries'), gpm(flow.carriesGpm), card('atLeast', { flow: gpm(flow.leastGpm) }), {
        ...{ summary: why('carries/sum'), formula: why('carries/how'), source: why('carries/source') },
      }),
      line(
        'contact',
        card('contact'),
        flow.contactSeconds === null ? card('noFlow') : `${number(flow.contactSeconds, 0)} s`,
        card('bedVolumes', { volumes: number(flow.bedVolumesH, 0) }),
        {
          ...{ summary: why('contact/sum'), formula: why('contact/how'), source: why('contact/source') },
          inputs: [...beds, ...demand],
        },
      ),
      line('drop-clean', card('dropClean'), psi(dropAtDemand.clean), card('atCarried', { pressure: psi(dropAtCarried.clean) }), drop),
      line('drop-aged', card('dropAged'), psi(dropAtDemand.aged), card('atCarried', { pressure: psi(dropAtCarried.aged) }), drop),
      line(
        'at-15-psi',
        card('at15', { pressure: psi(MOST_DROP_PSI) }),
        card('cleanAged', { clean: gpm(at15Psi.clean), aged: gpm(at15Psi.aged) }),
        card('at15Hint'),
        { ...drop, summary: why('at15/sum'), source: why('at15/source') },
      ),
      line('public-works', card('publicWorks'), card(publicWorks(flow.withinPublicWorks)), card('publicWorksHint'), {
        summary: why('public/sum'),
        formula: why('public/how', {
          ...{ most: String(PUBLIC_WORKS_GPM_FT2), flux: number(flow.gpmFt2, 1) },
          ...{ least: String(PUBLIC_WORKS_BED_IN / 12), depth: number((filled.levels?.bedDepthIn ?? 0) / 12, 1) },
        }),
        source: PUBLIC_SOURCE,
      }),
    ],
  }
}

/** What goes into the lines: of the bed, and of the house's demand. */
function inputsOf(
  { flow, filled, season, fixtureUnits }: SiteEvaluation,
  input: SiteInput,
  { display, sources, why, card }: CardWords,
): { beds: WhyWords['inputs']; demand: WhyWords['inputs'] } {
  const volume = formatVolumeFt3(filled.fill.resinFt3, display)
  const isTwo = !('reason' in flow) && flow.working === 2
  return {
    beds: [
      { name: why('in/resin'), value: isTwo ? why('inEachOfTwo', { volume }) : volume, from: sources.resinFt3 },
      { name: why('in/tanks'), value: why(`tanks/${input.arrangement}`) },
      { name: why('in/depth'), value: formatLengthIn(filled.levels?.bedDepthIn, display) },
      { name: why('in/waterAtColdest'), value: formatTemperatureF(season.coldestF, display), from: sources.coldestF ?? sources.usualF },
    ],
    demand: [
      {
        name: why('in/units'),
        value: `${showNumber(fixtureUnits, 1, display)} wsfu`,
        from: input.fixtureUnits === null ? why('in/unitsUsual') : sources.fixtureUnits,
      },
      { name: why('in/curve'), value: card(`curve/${input.demandCurve}`) },
    ],
  }
}

function publicWorks({ flux, depth }: { flux: boolean; depth: boolean }) {
  if (flux && depth) return 'public/both'
  if (!flux && !depth) return 'public/neither'
  return flux ? 'public/flux' : 'public/depth'
}
