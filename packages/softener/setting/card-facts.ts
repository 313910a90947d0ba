import { lbFt3ToGL } from '@almanac/units/concentration'
import type { AmountDisplay } from '@almanac/units/display'
import { formatTemperatureF, formatVolumeFt3, formatWaterGal } from '@almanac/units/format'
import { formatPercent, showNumber } from '@almanac/units/format-number'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { sourceWords } from '../kit/source-words.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import type { CompensatedHardness } from '../water/compensated-hardness.ts'
import type { CardWords, WhyWords } from './card-types.ts'
import type { DoseFigures } from './dose-figures.ts'
import { ASSUMED_AGE_YEARS, type SettingFigures } from './setting-figures.ts'

/** What the lines of the card share: the figures, the words, and the sentences about capacity and use that several of them give as their reasons. */
export type CardFacts = CardWords & {
  input: SiteInput
  figures: FirmFigures
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
  /** Why this dose: it costs least, uses least salt, is the most there is, or was chosen by hand. */
  doseBy: 'cost' | 'salt' | 'none' | 'wanted'
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
  words: CardWords,
): CardFacts {
  const { filled, season } = evaluation
  const { display, sources, card, why, kinds } = words
  const dose = setting.doses[setting.chosen] as DoseFigures
  const curve = figures.curves[filled.kind.id]
  const resinWords = formatVolumeFt3(filled.fill.resinFt3, display)
  const doseWords = doseWordsIn(display)
  return {
    ...words,
    ...{ input, figures, hardness, setting, dose, resinWords, doseWords },
    grains: (grains) => grainWords(grains, display),
    capacityInputs: [
      {
        name: why('in/resin'),
        value: setting.tanks === 2 ? why('inEachOfTwo', { volume: resinWords }) : resinWords,
        from: sources.resinFt3,
      },
      { name: why('in/kind'), value: kinds(filled.kind.id), from: sources.resinKind },
      { name: why('in/salt'), value: why('in/saltDose', { dose: doseWords(dose.saltLbFt3), salt: card(`of/${input.salt}`) }) },
      { name: why('in/byAge'), value: formatPercent(setting.ageShare, display), from: sources.bedAgeYears },
      {
        name: why('in/byTemperature'),
        value: why('in/atTemperature', {
          share: formatPercent(setting.temperatureShare, display),
          temperature: formatTemperatureF(season.meanF, display),
        }),
      },
      { name: why('in/bySolids'), value: formatPercent(setting.solidsShare, display), from: sources.dissolvedSolidsMgL },
    ],
    capacityAssumptions: [
      ...evaluation.fillAssumptions,
      ...(input.resinKind === null ? [why('assumed/resin')] : []),
      ...(input.bedAgeYears === null ? [why('assumed/age', { years: String(ASSUMED_AGE_YEARS) })] : []),
      why('assumed/ageing'),
      ...(season.assumed === 'none' ? [] : [why(`assumed/${season.assumed}`)]),
      ...(input.dissolvedSolidsMgL === null ? [why('assumed/solids')] : []),
    ],
    capacityMissing: [
      ...(input.bedAgeYears === null ? [why('missing/age')] : []),
      ...(season.assumed === 'none' ? [] : [why('missing/temperature')]),
      ...(input.dissolvedSolidsMgL === null ? [why('missing/solids')] : []),
    ],
    capacitySource: why('capacitySource', {
      curve: curve.label,
      source: sourceWords(curve.source, words.words),
    }),
    useInputs: [
      { name: why('in/waterDay'), value: formatWaterGal(setting.use.gallonsPerDay, display), from: why(`use/${setting.use.basis}`) },
      { name: why('in/hardness'), value: `${showNumber(hardness.compensatedGpg, 1, display)} gpg`, from: why('in/withMetals') },
    ],
    priceMissing: [
      ...(figures.saltPriceMinorPerLb === null ? [why('missing/saltPrice')] : []),
      ...(figures.waterPriceMinorPerGal === null ? [why('missing/waterPrice')] : []),
    ],
    doseBy: input.wantedLbFt3 !== null && setting.chosen !== setting.best ? 'wanted' : setting.by,
  }
}
