import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { type IdentifyInput, identifyTank } from '@almanac/softener/identify/identify-tank'
import { wordsIn } from '@almanac/words/words-in'
import { describe, expect, it } from 'vitest'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { COMPANY, SPANISH, spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { AnswerBar } from './answer-bar.tsx'
import { Candidates } from './candidates.tsx'
import { ClueFields } from './clue-fields.tsx'
import { readClues, textsOfSearch } from './clue-texts.ts'
import { HowSure } from './how-sure.tsx'

const words = wordsIn(SPANISH, 'whichTank')
const speaking = { display: COMPANY, words: wordsIn(SPANISH, 'kit'), tank: words, figures: USUAL_FIGURES }

/** The page for what stands in its address. */
function page(address: string, more: IdentifyInput['clues'] = {}) {
  const texts = textsOfSearch(new URLSearchParams(address), 'in')
  const read = readClues(texts, { display: COMPANY, words })
  const clues = { ...read.clues, ...more }
  const found = identifyTank({ clues, ...speaking })
  if (!found.ok) throw new Error(found.reason)
  const shown = spanishScreen('office', [
    <AnswerBar key="answer" identity={found.value} known={address !== ''} onAsk={() => {}} />,
    <ClueFields key="clues" texts={texts} read={read} identity={found.value} change={() => {}} />,
    <HowSure key="sure" found={found} clues={clues} />,
    <Candidates key="candidates" identity={found.value} most={99} />,
  ])
  const notes = [...found.assumptions, ...found.missing, ...found.sources]
  return { found, all: [shown, ...notes].join(' · ') }
}

describe('which tank, for a Spanish technician', () => {
  it.each([
    ['nothing known', ''],
    ['two measures', 'round=31.5&top=61&sleeve=no'],
    ['an unlisted size', 'round=34.6&rim=50&sleeve=no'],
    ['a label', 'label=twin 1054 48k blue&sleeve=yes'],
    ['a label that cannot be read', 'label=azul'],
    ['what cannot be', 'round=4000&rim=54&top=50&across=1&depth=900&hole=40'],
    ['what does not go together', 'label=10x54&rim=62&depth=12&hole=4'],
  ])('%s: no English', (_, address) => {
    expect(englishLeft(page(address).all, ['blue'])).toEqual([])
  })
  it('says what is left out and what is odd', () => {
    const { problems } = page('', { nominalGrains: 5, resinFt3: Number.NaN, heightIn: 54, heightWithValveIn: 50 }).found.value
    expect(problems).toHaveLength(3)
    expect(englishLeft(problems.map(({ sentence }) => sentence).join(' · '))).toEqual([])
    const { odd } = page('label=10x54&rim=62').found.value
    expect(odd[0]?.sentence).toBe('Altura hasta el borde: 62 in no va con un tanque de 10 × 54 in, que daría cerca de 54 in. Revíselo.')
  })
  it('an empty table says so', () => {
    const found = identifyTank({ clues: {}, ...speaking, figures: { ...USUAL_FIGURES, tanks: [] } })
    expect(englishLeft(found.ok ? 'the' : found.reason)).toEqual([])
  })
})
