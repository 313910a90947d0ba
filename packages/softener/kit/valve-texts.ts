import type { Words } from '@almanac/words/words'
import type { ValveCard } from '../firm/firm-figures.ts'
import { FLUSH, MEASURE_FIRST, USUAL_SEALS, USUAL_VALVES } from '../firm/usual-valves.ts'

const LABELS = ['usual-meter', 'usual-timer', 'usual-small-tube', 'usual-commercial'] as const
const TEXTS = { [FLUSH]: 'valve/flush', [MEASURE_FIRST]: 'valve/byMaker', [USUAL_SEALS]: 'valve/seals' } as const

/** A valve's name for the middle of a sentence: in the reader's language where it is one of the usual ones. */
export function valveLabel(label: string, words: Words<'kit'>): string {
  const usual = LABELS.find((id) => USUAL_VALVES.some((card) => card.id === id && card.label === label))
  return usual ? words(`valve/${usual}`) : label.toLowerCase()
}

/** What a valve's card says, for the middle of a sentence: in the reader's language where the text is the usual one; a company's own words as it wrote them. */
export function valveTexts({ label, tubeRule, seals }: Pick<ValveCard, 'label' | 'tubeRule' | 'seals'>, words: Words<'kit'>) {
  const said = (text: string) => (text in TEXTS ? words(TEXTS[text as keyof typeof TEXTS]) : text)
  return { label: valveLabel(label, words), tubeRule: said(tubeRule), seals: said(seals) }
}
