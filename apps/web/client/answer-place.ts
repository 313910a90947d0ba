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

/** The page with the form for a question's answer, and by which message the way there is called. */
export function answerLink(key: QuestionKey, { bedId, siteId }: Bed) {
  switch (answerPlaces[key]) {
    case 'water-test':
      return { href: `/water/tests/new?site=${siteId}`, act: 'recordTest' } as const
    case 'supply':
      return { href: `/sites/${siteId}`, act: 'noteWater' } as const
    case 'inspection':
      return { href: `/beds/${bedId}?form=inspection`, act: 'inspect' } as const
    case 'facts':
      return { href: `/beds/${bedId}?form=facts`, act: 'enterAnswer' } as const
  }
}
