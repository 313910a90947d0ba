import { jobKinds } from '@almanac/records/job-kind'
import { languages } from '@almanac/records/language'
import { emergencies, foundSizes } from '@almanac/records/procedure-ask'
import { procedureForJob } from '@almanac/softener/procedure/procedure-for-job'
import { rebedBriefs } from '@almanac/softener/procedure/rebed-briefs'
import { asks } from '@almanac/words/en/asks'
import { cautions } from '@almanac/words/en/cautions'
import { steps } from '@almanac/words/en/steps'
import { describe, expect, test } from 'vitest'
import { procedureContexts } from '../support/procedure-contexts.ts'
import { ENGLISH, procedureWords } from '../support/procedure-words.ts'

const CONTEXTS = procedureContexts().flatMap((context, i) => (i === 0 ? [context, { ...context, emptied: true }] : [context]))
const all = (words: typeof ENGLISH) =>
  CONTEXTS.flatMap((context) =>
    jobKinds.flatMap((kind) =>
      (kind === 'emergency' ? emergencies : [null]).map((emergency) => procedureForJob(kind, { ...context, emergency }, words)),
    ),
  )

/** Words that note which of them were said. */
function listening() {
  const said = { steps: new Set<string>(), cautions: new Set<string>(), asks: new Set<string>(), beadCondition: new Set<string>() }
  const hear = <Room extends keyof typeof said>(room: Room): (typeof ENGLISH)[Room] => {
    const speak = ENGLISH[room] as unknown as ((key: string, values?: Record<string, string>) => string) & { has: (key: string) => boolean }
    const heard = (key: string, values?: Record<string, string>) => {
      said[room].add(key)
      return speak(key, values)
    }
    return Object.assign(heard, { has: (key: string) => speak.has(key) }) as unknown as (typeof ENGLISH)[Room]
  }
  return {
    said,
    words: { steps: hear('steps'), cautions: hear('cautions'), asks: hear('asks'), beadCondition: hear('beadCondition'), kit: ENGLISH.kit },
  }
}

describe.each(languages)('%s', (language) => {
  const words = procedureWords(language === 'en' ? 'en-US' : `${language}-US`)
  test('each procedure has the same steps, cautions and answers as the English one, with words for all of them', () => {
    const english = all(ENGLISH)
    all(words).forEach((procedure, i) => {
      const shape = (one: typeof procedure | undefined) =>
        one?.steps.map((step) => [
          ...[step.id, step.minutes, step.cautions.map((caution) => caution.kind)],
          step.asks.map((ask) => [ask.id, ask.choices.map((choice) => choice.value)]),
        ])
      expect(shape(procedure)).toEqual(shape(english[i]))
      // A key shown as it stands is a message that is not there.
      expect(JSON.stringify(procedure)).not.toMatch(/(steps|cautions|asks|beadCondition)\.|undefined|NaN|\{\w+\}/)
    })
  })
})

test('every message of steps, cautions and questions is said by some procedure or on paper', () => {
  const { said, words } = listening()
  all(words)
  for (const context of CONTEXTS) rebedBriefs(context, words)
  expect(Object.keys(steps).filter((key) => !said.steps.has(key))).toEqual([])
  expect(Object.keys(cautions).filter((key) => !said.cautions.has(key))).toEqual([])
  // The found size is asked beside the kit, at no step.
  const beside: readonly string[] = foundSizes
  expect(Object.keys(asks).filter((key) => !said.asks.has(key) && !beside.includes(key))).toEqual([])
})
