import { resinKindWords } from '@almanac/records/resin-kind'
import { lbFt3ToGL } from '@almanac/units/concentration'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTemperatureF, formatVolumeFt3, formatWaterGal } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import type { CompensatedHardness } from '../water/compensated-hardness.ts'
import type { CardWords, SiteSources, WhyWords } from './card-types.ts'
import type { DoseFigures } from './dose-figures.ts'
import { ASSUMED_AGE_YEARS, type SettingFigures } from './setting-figures.ts'

/** What the lines of the card share: the figures, and the sentences about capacity and use that several of them give as their reasons. */
export type CardFacts = {
  input: SiteInput
  figures: FirmFigures
  display: AmountDisplay
  sources: SiteSources
  valveLabel: string | null
  hardness: CompensatedHardness
  setting: SettingFigures
  dose: DoseFigures
  capacityInputs: WhyWords['inputs']
  capacityAssumptions: string[]
  capacityMissing: string[]
  capacitySource: string
  useInputs: WhyWords['inputs']
  priceMissing: string[]
  resinWords: string
  doseHint: string
  doseReason: string
  grains: (grains: number) => string
  doseWords: (saltLbFt3: number) => string
}

/** "8 lb/ft³", or grams a litre. */
export function doseWordsIn(display: AmountDisplay): (saltLbFt3: number) => string {
  return (saltLbFt3) =>
    display.unitSystem === 'us' ? `${showNumber(saltLbFt3, 1, display)} lb/ft³` : `${showNumber(lbFt3ToGL(saltLbFt3), 0, display)} g/L`
}

export const grainWords = (grains: number, display: AmountDisplay): string => `${showNumber(Math.round(grains / 10) * 10, 0, display)} gr`

export function cardFacts(
  evaluation: SiteEvaluation,
  setting: SettingFigures,
  hardness: CompensatedHardness,
  input: SiteInput,
  figures: FirmFigures,
  { display, sources, valveLabel }: CardWords,
): CardFacts {
  const { filled, season } = evaluation
  const dose = setting.doses[setting.chosen] as DoseFigures
  const curve = figures.curves[filled.kind.id]
  const resinWords = formatVolumeFt3(filled.fill.resinFt3, display)
  const doseWords = doseWordsIn(display)
  const reason = REASONS[input.wantedLbFt3 !== null && setting.chosen !== setting.best ? 'wanted' : setting.by]
  return {
    ...{ input, figures, display, sources, valveLabel, hardness, setting, dose, resinWords, doseWords },
    grains: (grains) => grainWords(grains, display),
    capacityInputs: [
      { name: 'Resin', value: `${resinWords}${setting.tanks === 2 ? ' in each of two tanks' : ''}`, from: sources.resinFt3 },
      { name: 'Kind', value: resinKindWords[filled.kind.id], from: sources.resinKind },
      { name: 'Salt', value: `${doseWords(dose.saltLbFt3)} of ${SALT_WORDS[input.salt]}` },
      { name: 'Left of it by age', value: formatPercent(setting.ageShare, display), from: sources.bedAgeYears },
      {
        name: 'By temperature',
        value: `${formatPercent(setting.temperatureShare, display)} at ${formatTemperatureF(season.meanF, display)}`,
      },
      { name: 'By dissolved solids', value: formatPercent(setting.solidsShare, display), from: sources.dissolvedSolidsMgL },
    ],
    capacityAssumptions: [
      ...evaluation.fillAssumptions,
      ...(input.resinKind === null ? ['Resin kind not recorded: 8% crosslink gel assumed (common practice).'] : []),
      ...(input.bedAgeYears === null ? [`When the bed went in is not known: ${ASSUMED_AGE_YEARS} years assumed.`] : []),
      'Capacity falls by 3% a year, the middle of 1 to 5% (UFC 3-240-13FN).',
      ...(season.assumed === 'none' ? [] : [SEASON_WORDS[season.assumed]]),
      ...(input.dissolvedSolidsMgL === null ? ['Dissolved solids not measured: up to 500 mg/L assumed.'] : []),
    ],
    capacityMissing: [
      ...(input.bedAgeYears === null ? ['when the bed went in'] : []),
      ...(season.assumed === 'none' ? [] : ['water temperature in winter and in summer']),
      ...(input.dissolvedSolidsMgL === null ? ['dissolved solids'] : []),
    ],
    capacitySource: `Curve: ${curve.label} (${curve.source}); temperature: Michaud, Water Conditioning & Purification; never above 5,994 gr per lb NaCl by charge (derived).`,
    useInputs: [
      { name: 'Water a day', value: formatWaterGal(setting.use.gallonsPerDay, display), from: USE_WORDS[setting.use.basis] },
      { name: 'Hardness', value: `${showNumber(hardness.compensatedGpg, 1, display)} gpg`, from: 'with the allowance for metals' },
    ],
    priceMissing: [
      ...(figures.saltPriceMinorPerLb === null ? ['your company’s price of salt'] : []),
      ...(figures.waterPriceMinorPerGal === null ? ['the price of water'] : []),
    ],
    doseHint: `${doseWords(dose.saltLbFt3)}, ${reason.hint}`,
    doseReason: reason.words,
  }
}

const SALT_WORDS = { NaCl: 'sodium chloride', KCl: 'potassium chloride' } as const

const SEASON_WORDS = {
  swing: 'Winter and summer temperatures are not both known: 10 °F below and above the usual one assumed (from memory).',
  all: 'Water temperature not measured: 60 °F assumed, 10 °F less in winter and more in summer (common practice; from memory).',
} as const

const USE_WORDS = {
  measured: 'by the meter',
  people: '60 gal a person (common practice: 60 to 80)',
  household: 'mean household, Residential End Uses of Water 2016',
} as const

const REASONS = {
  cost: { hint: 'costs least', words: 'Of the doses that work, this one costs least in salt and water a year.' },
  salt: {
    hint: 'uses least salt',
    words: 'No salt price is set, so we chose the dose that uses the least salt a year. With prices it may be a larger one.',
  },
  none: {
    hint: 'the most there is',
    words:
      'No dose works: each lets too much hardness through or doesn’t last a day. The largest is shown; the softener is too small for this water.',
  },
  wanted: { hint: 'chosen by hand', words: 'This dose was chosen by hand; the table of doses shows the one that costs least.' },
} as const
