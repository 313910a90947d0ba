// `npm run bench -- words`: how hard the English messages are to read, how many each language has, and what the words of the tablet weigh.
import { gzipSync } from 'node:zlib'
import { en } from '@almanac/words/en/all'
import { field as fieldEn } from '@almanac/words/en/field'
import { es } from '@almanac/words/es/all'
import { field as fieldEs } from '@almanac/words/es/field'
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'
import { officeTexts } from './words/office-sentences.ts'

/** A message as it may be read: one value in each place, tags away, one of the forms of a plural. */
const read = (message: string): string =>
  message
    .replace(/\{\w+, plural, [^{}]*(?:\{[^{}]*\}[^{}]*)*other \{([^{}]*)\}\s*\}/g, (_, other: string) => other.replace('#', '2'))
    .replace(/\{\w+\}/g, 'ten')
    .replace(/<\/?\w+>/g, '')

/** Its grade by Flesch and Kincaid (1975): years of American school. Counted over its sentences, words and syllables. */
function grade(text: string): number {
  const words = wordsOf(text)
  const sentences = Math.max(1, text.split(/[.?:;](?:\s|$)/).filter((part) => /\p{L}/u.test(part)).length)
  return fleschKincaid({ sentence: sentences, word: words.length, syllable: words.reduce((sum, word) => sum + syllable(word), 0) })
}

type Graded = { at: string; text: string; words: number; grade: number }

const wordsOf = (text: string) => text.match(/[\p{L}\p{N}’]+/gu) ?? []

/** The sentences among texts with their grades, hardest first. A label of one or two words has no sentence to grade: one long word would count as college. */
const gradeAll = (texts: { at: string; text: string }[]): Graded[] =>
  texts
    .map((one) => ({ ...one, words: wordsOf(one.text).length, grade: grade(one.text) }))
    .filter(({ words }) => words >= 4)
    .sort((a, b) => b.grade - a.grade)

/** Prints the mean, the mean by words (long sentences count for more), the ten hardest of all and of the longer ones; gives the first. */
function show(name: string, graded: Graded[]): number {
  const mean = graded.reduce((sum, one) => sum + one.grade, 0) / graded.length
  const byWords = graded.reduce((sum, one) => sum + one.grade * one.words, 0) / graded.reduce((sum, one) => sum + one.words, 0)
  console.log(
    `${name}: ${graded.length}, grade (Flesch-Kincaid) mean ${mean.toFixed(1)}, weighted by words ${byWords.toFixed(1)}; hardest:`,
  )
  const list = (some: Graded[]) => {
    for (const one of some.slice(0, 10)) console.log(`  ${one.grade.toFixed(1)}  ${one.at}: ${one.text}`)
  }
  list(graded)
  console.log('hardest of twelve words or more:')
  list(graded.filter(({ words }) => words >= 12))
  return Number(mean.toFixed(2))
}

export default function measureWords() {
  const all = Object.entries(en).flatMap(([room, messages]) =>
    Object.entries(messages as Record<string, string>).map(([key, message]) => ({ at: `${room}.${key}`, text: read(message) })),
  )
  const messages = gradeAll(all)
  const office = gradeAll(officeTexts())
  const count = (catalogue: object) => Object.values(catalogue).reduce((sum, room) => sum + Object.keys(room as object).length, 0)
  const weight = (catalogue: object) => gzipSync(JSON.stringify(catalogue)).length

  console.log(`messages: en ${count(en)}, es ${count(es)}; of four words or more in English: ${messages.length}`)
  const means = [show('messages', messages), show('the office’s sentences, in its sources', office)]
  console.log(`words of the tablet, compressed: en ${weight(fieldEn)} bytes, es ${weight(fieldEs)} bytes`)
  return {
    messages: { en: count(en), es: count(es) },
    meanGrade: means[0],
    office: { sentences: office.length, meanGrade: means[1] },
    tabletBytes: { en: weight(fieldEn), es: weight(fieldEs) },
  }
}
