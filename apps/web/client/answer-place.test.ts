import { type QuestionKey, questionKeys } from '@almanac/records/forecast-question'
import { expect, test } from 'vitest'
import { answerLink } from './answer-place.ts'

const bed = { bedId: 'b', siteId: 's' }

// What is taken with a kit is a test; what the town adds is known of its supply; what a person remembers is a fact of the bed.
const expected: Record<QuestionKey, [string, string]> = {
  beginning: ['/beds/b?form=facts', 'enterAnswer'],
  crosslink: ['/beds/b?form=facts', 'enterAnswer'],
  'last-seen': ['/beds/b?form=facts', 'enterAnswer'],
  inspection: ['/beds/b?form=inspection', 'inspect'],
  'water-test': ['/water/tests/new?site=s', 'recordTest'],
  iron: ['/water/tests/new?site=s', 'recordTest'],
  disinfectant: ['/sites/s', 'noteWater'],
}

test.each(questionKeys)('the answer to %s goes where its fact is kept, whatever the question is worded as', (key) => {
  const { href, act } = answerLink(key, bed)
  expect([href, act]).toEqual(expected[key])
})
