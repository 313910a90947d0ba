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

function settingWarnings({ setting, dose, input, card }: CardFacts, commercial: boolean): string[] {
  const warnings: string[] = []
  if (dose.fault === 'too-often') warnings.push(card('warn/too-often'))
  if (dose.fault === 'iron-stays') warnings.push(card('warn/iron-stays'))
  if (setting.use.basis === 'household') warnings.push(card(commercial ? 'warn/commercial' : 'warn/household'))
  if (dose.fault === 'leaks') warnings.push(card('warn/leaks'))
  if (input.control === null) warnings.push(card('warn/control'))
  if (setting.ageShare <= 0.75) warnings.push(card('warn/aged'))
  return warnings
}
