// `npm run bench -- words`: how hard the English messages are to read, how many each language has, and what the words of the tablet weigh.
import { gzipSync } from 'node:zlib'
import { en } from '@almanac/words/en/all'
import { field as fieldEn } from '@almanac/words/en/field'
import { es } from '@almanac/words/es/all'
import { field as fieldEs } from '@almanac/words/es/field'
import { fleschKincaid } from 'flesch-kincaid'
import { syllable } from 'syllable'

/** A message as it may be read: one value in each place, tags away, one of the forms of a plural. */
const read = (message: string): string =>
  message
    .replace(/\{\w+, plural, [^{}]*(?:\{[^{}]*\}[^{}]*)*other \{([^{}]*)\}\s*\}/g, (_, other: string) => other.replace('#', '2'))
    .replace(/\{\w+\}/g, 'ten')
    .replace(/<\/?\w+>/g, '')

/** Its grade by Flesch and Kincaid (1975): years of American school. Counted over its sentences, words and syllables. */
function grade(text: string): number {
  const words = text.match(/[\p{L}\p{N}’]+/gu) ?? []
  const sentences = Math.max(1, text.split(/[.?:;](?:\s|$)/).filter((part) => /\p{L}/u.test(part)).length)
  return fleschKincaid({ sentence: sentences, word: words.length, syllable: words.reduce((sum, word) => sum + syllable(word), 0) })
}

export default function measureWords() {
  const all = Object.entries(en).flatMap(([room, messages]) =>
    Object.entries(messages as Record<string, string>).map(([key, message]) => ({ at: `${room}.${key}`, text: read(message) })),
  )
  // A label of one or two words has no sentence to grade: one long word would count as college.
  const sentences = all.filter(({ text }) => (text.match(/[\p{L}\p{N}’]+/gu) ?? []).length >= 4)
  const graded = sentences.map((one) => ({ ...one, grade: grade(one.text) })).sort((a, b) => b.grade - a.grade)
  const mean = graded.reduce((sum, one) => sum + one.grade, 0) / graded.length
  const count = (catalogue: object) => Object.values(catalogue).reduce((sum, room) => sum + Object.keys(room as object).length, 0)
  const weight = (catalogue: object) => gzipSync(JSON.stringify(catalogue)).length

  console.log(`messages: en ${count(en)}, es ${count(es)}; of four words or more in English: ${graded.length}`)
  console.log(`grade (Flesch-Kincaid), mean ${mean.toFixed(1)}, median ${graded[Math.floor(graded.length / 2)]?.grade.toFixed(1)}`)
  for (const one of graded.slice(0, 10)) console.log(`  ${one.grade.toFixed(1)}  ${one.at}: ${one.text}`)
  console.log(`words of the tablet, compressed: en ${weight(fieldEn)} bytes, es ${weight(fieldEs)} bytes`)
  return {
    messages: { en: count(en), es: count(es) },
    meanGrade: Number(mean.toFixed(2)),
    tabletBytes: { en: weight(fieldEn), es: weight(fieldEs) },
  }
}
