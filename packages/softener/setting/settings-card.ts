import type { Refusal } from '@almanac/units/result'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { isCommercial } from '../site/commercial.ts'
import type { SiteEvaluation } from '../site/evaluate-site.ts'
import type { SiteInput } from '../site/site-input.ts'
import { enterLines } from './card-enter.ts'
import { type CardFacts, cardFacts } from './card-facts.ts'
import { drinkingCautions, followLines } from './card-follows.ts'
import { stepLines } from './card-steps.ts'
import type { CardWords, SettingsCard } from './card-types.ts'

/**
 * The setting of one softener in plain words for the valve at hand, each line with its reasons. `evaluation` must be of the same input and
 * figures. Refuses with the sentence for which no setting could be worked out.
 */
export function settingsCard(evaluation: SiteEvaluation, input: SiteInput, figures: FirmFigures, words: CardWords): SettingsCard | Refusal {
  const { setting, hardness } = evaluation
  if ('reason' in hardness) return hardness
  if ('reason' in setting) return setting
  const facts = cardFacts(evaluation, setting, hardness, input, figures, words)
  return {
    control: input.control === 'timer' ? 'timer' : 'meter',
    enter: enterLines(facts),
    steps: stepLines(facts),
    follows: followLines(facts),
    cautions: drinkingCautions(facts),
    warnings: [...hardness.warnings, ...evaluation.filled.fill.warnings, ...settingWarnings(facts, isCommercial(evaluation.filled))],
  }
}

function settingWarnings({ setting, dose, input }: CardFacts, commercial: boolean): string[] {
  const warnings: string[] = []
  if (dose.fault === 'too-often')
    warnings.push(
      'This softener doesn’t last a day on this water: it’s too small, or the bed is worn out. It lets hard water through every day.',
    )
  if (dose.fault === 'iron-stays')
    warnings.push('At this dose iron stays in the bed: with iron in the water practice sets 8 to 10 lb/ft³ of salt or more.')
  if (setting.use.basis === 'household')
    warnings.push(
      commercial
        ? 'The water used here isn’t known. A household’s use is assumed, and that says nothing of a commercial site: measure it first.'
        : 'Nobody has recorded how many people live here: an average household’s use is assumed.',
    )
  if (dose.fault === 'leaks') warnings.push('At this dose too much hardness gets through: set more salt.')
  if (input.control === null) warnings.push('We don’t know if the valve runs by meter or timer. This card is for a meter.')
  if (setting.ageShare <= 0.75)
    warnings.push(
      'By its age this bed has lost a quarter of its capacity or more: measure it before setting by this card (UFC 3-240-13FN: replace at 25%).',
    )
  return warnings
}
