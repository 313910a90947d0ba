import type { BedExplanation, BedPage } from '@almanac/contract/beds'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { beadConditions } from '@almanac/records/bead-condition'
import { endCauses } from '@almanac/records/end-cause'
import { questionKeys } from '@almanac/records/forecast-question'
import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { speakingIn } from '../../../../tests/support/forecast-speaking.ts'
import { ENDED, jobLines, LINE, OWN, PROOFS, RECORD, TANK, WHOM } from '../../../../tests/support/spanish-records.ts'
import { SPANISH, spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Bed } from './bed.tsx'

vi.mock('@tanstack/react-query', async (original) => {
  const { answered, answeredInPages } = await import('../../../../tests/support/answered-queries.ts')
  return { ...(await original<object>()), useQuery: answered, useInfiniteQuery: answeredInPages }
})
vi.mock('next/navigation', () => ({
  useRouter: () => ({ replace: () => {}, push: () => {} }),
  usePathname: () => '/',
  useSearchParams: () => new URLSearchParams(),
}))

/** What of a page is English, apart from what people wrote themselves. */
const left = (shown: string) => englishLeft(shown, OWN)
const screen = (part: ReactNode) => spanishScreen('office', part)

it('a Spanish technician reads a bed: when it comes due and why, facts, kit, proofs', () => {
  const water = {
    supplyPeriods: [{ fromDay: '2000-01-01', disinfectant: 'free-chlorine' as const, disinfectantMgL: 1.2, hardnessGpg: 15, ironMgL: 0.4 }],
  }
  const found = forecastBed(
    {
      ...{
        asOfDay: '2026-11-29',
        beginning: { earliestDay: '2012-01-01', latestDay: '2012-12-31' },
        lastSeenDay: null,
        crosslinkPercent: null,
      },
      ...{ resinVolumeFt3: 1.5, gallonsPerDay: null, water: { ...water, tests: [], preTreatments: [] }, speaking: speakingIn(SPANISH) },
    },
    tradePriors(),
  )
  if (!found.ok) throw new Error(found.reason)
  const { value, assumptions, missing } = found
  const fit = {
    version: 'fit-1',
    asOfDay: '2026-11-01',
    shownAt: '',
    records: 90,
    failures: 12,
    leftOut: [],
    learned: {},
    fellBackBecause: null,
  }
  const forecast = {
    ...{ asOfDay: '2026-11-29', computedAt: '', due10Day: value.due10Day, due50Day: value.due50Day, due90Day: value.due90Day },
    ...{ chance3Months: 0.004, chance12Months: 0.3, chance24Months: 0.995, chanceAlreadyFailed: 0.2, drivers: value.drivers },
    ...{ assumptions, missing, question: null, refusal: null },
  }
  const page = {
    ...{
      ...LINE,
      version: 1,
      gravelLb: 0,
      tubeCutIn: 53,
      entered: { volume: { value: 42.5, unit: 'L', why: 'Ring twice' } },
      tank: TANK,
    },
    sources: {
      tankSize: 'visit 2026-03-04',
      resinKind: 'read off the unit, 2026-03-04',
      began: 'import beds.csv line 3',
      lastSeenDay: 'close-out 2026-03-04',
    },
    ...{
      valve: { id: 'v', version: 1, backwashGpm: 2.4, tubeOdIn: null, cardId: null },
      softener: { id: 'o', label: 'Quarry Close 2', tankCount: 2 },
    },
    ...{ site: { id: 's', label: 'Quarry Close 2', town: 'Fleetham', whom: WHOM }, facts: RECORD, waterTemperatureC: null },
    inspections: beadConditions.map((beadCondition) => ({
      ...{
        id: beadCondition,
        day: '2026-01-02',
        beadCondition,
        capacityShare: 0.7,
        moistureShare: 0.5,
        pressureDropPsi: 8,
        notes: null,
        source: '',
      },
    })),
    otherBeds: [...endCauses.map((endCause) => ({ ...ENDED, id: endCause, endCause })), { ...ENDED, id: 'n', endedLatest: null }],
    ...{ openJobs: jobLines, heardHard: { earliest: '2026-01-01', latest: '2026-02-01', calledAt: '2026-02-03T15:00:00Z' }, forecast },
  } as unknown as BedPage
  const explain = (change: object) =>
    answers.set('beds.explain', { ...found, value: { ...value, fit, ...change } } as unknown as BedExplanation)
  answers.set('pictures.ofBed', PROOFS)
  const shows = (change: object) => {
    answers.set('beds.page', { ...page, ...change })
    return left(screen(<Bed bedId="b" />))
  }
  explain({})
  expect(shows({})).toEqual([])
  for (const key of questionKeys)
    for (const years of [0.1, 0.5, 1, 3]) {
      explain({ sharpest: { key, years } })
      expect(shows({}), `${key}, ${years}`).toEqual([])
    }
  explain({ fit: null, sharpest: null })
  for (const question of questionKeys)
    expect(shows({ forecast: { ...forecast, question, due90Day: null, chance12Months: null } })).toEqual([])
  explain({ fit: { ...fit, fellBackBecause: 'x' } })
  expect(
    shows({ forecast: { ...forecast, drivers: [], chance12Months: 0.01 }, facts: { ...RECORD, diameterIn: null, heightIn: null } }),
  ).toEqual([])
  expect(
    shows({ forecast: null, openJobs: [], inspections: [], site: { ...page.site, whom: { customerName: 'Fleetham', called: null } } }),
  ).toEqual([])
  expect(shows({ site: null, softener: null })).toEqual([])
  answers.set('pictures.ofBed', [])
  expect(shows({ endedEarliest: '2026-01-01', endedLatest: '2026-01-01', endCause: 'worn' })).toEqual([])
})
