import type { QuestionKey } from '@almanac/records/forecast-question'

/** Where the answer to each question is written down: the form of a bed's facts, of an inspection or of a water test, or the site with its supply. */
export const answerPlaces = {
  beginning: 'facts',
  crosslink: 'facts',
  'last-seen': 'facts',
  inspection: 'inspection',
  'water-test': 'water-test',
  iron: 'water-test',
  disinfectant: 'supply',
} as const satisfies Record<QuestionKey, string>

type Bed = { bedId: string; siteId: string }

/** The page with the form for a question's answer, and what the way there is called. */
export function answerLink(key: QuestionKey, { bedId, siteId }: Bed): { href: string; words: string } {
  switch (answerPlaces[key]) {
    case 'water-test':
      return { href: `/water/tests/new?site=${siteId}`, words: 'Record the test' }
    case 'supply':
      return { href: `/sites/${siteId}`, words: 'Note the water' }
    case 'inspection':
      return { href: `/beds/${bedId}?form=inspection`, words: 'Record an inspection' }
    case 'facts':
      return { href: `/beds/${bedId}?form=facts`, words: 'Enter answer' }
  }
}
