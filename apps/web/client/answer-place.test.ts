import { type QuestionKey, questionKeys } from '@almanac/records/forecast-question'
import { expect, test } from 'vitest'
import { answerLink } from './answer-place.ts'

const bed = { bedId: 'b', siteId: 's' }

// What is taken with a kit is a test; what the town adds is known of its supply; what a person remembers is a fact of the bed.
const expected: Record<QuestionKey, [string, string]> = {
  beginning: ['/beds/b?form=facts', 'Enter answer'],
  crosslink: ['/beds/b?form=facts', 'Enter answer'],
  'last-seen': ['/beds/b?form=facts', 'Enter answer'],
  inspection: ['/beds/b?form=inspection', 'Record an inspection'],
  'water-test': ['/water/tests/new?site=s', 'Record the test'],
  iron: ['/water/tests/new?site=s', 'Record the test'],
  disinfectant: ['/sites/s', 'Note the water'],
}

test.each(questionKeys)('the answer to %s goes where its fact is kept, whatever the question is worded as', (key) => {
  const { href, words } = answerLink(key, bed)
  expect([href, words]).toEqual(expected[key])
})
