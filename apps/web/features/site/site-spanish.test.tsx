import { beadConditions } from '@almanac/records/bead-condition'
import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { endCauses } from '@almanac/records/end-cause'
import { jobStates } from '@almanac/records/job-state'
import { measuringPoints } from '@almanac/records/measuring-point'
import { preTreatmentKinds } from '@almanac/records/pre-treatment-kind'
import { visitOutcomes } from '@almanac/records/visit-outcome'
import type { ReactNode } from 'react'
import { expect, it, vi } from 'vitest'
import { answers } from '../../../../tests/support/answered-queries.ts'
import { englishLeft } from '../../../../tests/support/english-left.ts'
import { ENDED, jobLines, LINE, OWN, TANK, WHOM } from '../../../../tests/support/spanish-records.ts'
import { spanishScreen } from '../../../../tests/support/spanish-screen.tsx'
import { Site } from './site.tsx'

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

it('a Spanish technician reads a site with all that can be on record of it', () => {
  const softener = {
    ...{ id: 'o', version: 1, label: 'Quarry Close 2', location: null, arrangement: 'twin-alternating', installedEarliest: '2012-01-01' },
    ...{
      installedLatest: '2012-12-31',
      installedAsWritten: null,
      peopleServed: 4,
      valveCardId: null,
      notes: null,
      condemnedDay: '2026-01-02',
    },
    tanks: [
      { ...TANK, beds: [LINE, ...endCauses.map((endCause) => ({ ...ENDED, id: endCause, endCause }))] },
      {
        ...TANK,
        id: 'u',
        position: 2,
        beds: [{ ...LINE, id: 'c', due10Day: null, lastSeenDay: null, beganEarliest: null, beganLatest: null }],
      },
      { ...TANK, id: 'v', position: 3, beds: [] },
    ],
    preTreatments: preTreatmentKinds.map((kind) => ({
      ...{
        id: kind,
        version: 1,
        kind,
        fromDay: '2020-01-01',
        toDay: kind === 'carbon' ? '2022-01-01' : null,
        source: 'said on a call, 2020-01-02',
      },
    })),
  }
  const consents = (['phone', 'text', 'email', 'letter'] as const).flatMap((channel, i) =>
    i === 3 ? [] : [{ version: 1, channel, granted: i === 0, source: (['call', 'visit', 'link'] as const)[i], sinceDay: '2026-01-01' }],
  )
  const contact = { version: 1, customerId: 'c', language: null, otherPhones: [], emailIsDead: true }
  const page = {
    ...{
      id: 's',
      version: 1,
      label: 'Quarry Close 2',
      street: 'Quarry Close 2',
      town: 'Fleetham',
      region: null,
      postcode: null,
      place: null,
    },
    ...{ visitHours: { weekdays: [1, 2], from: '14:30', until: null }, accessNotes: 'Ring twice', notes: 'Ring twice', whom: WHOM },
    supply: { id: 'w', name: 'Fleetham', kind: 'town', disinfectant: 'chloramine', residualMgL: 2.5 },
    tenures: [null, '2020-01-01', '2015-01-01'].map((toDay, i) => ({
      ...{ id: String(i), version: 1, fromDay: '2010-01-01', toDay },
      customer: { id: 'c', version: 1, name: 'Fleetham', reference: '17', notes: null, sites: 3 },
    })),
    contacts: [
      {
        ...contact,
        id: 'x',
        siteId: 's',
        role: 'occupier',
        name: 'Marta Quill',
        phone: '555 0134',
        email: 'm@larkmoor.example.com',
        consents,
      },
      { ...contact, id: 'y', siteId: null, role: 'payer', name: null, phone: null, email: null, consents: [] },
    ],
    ...{ softeners: [softener], openJobs: jobLines },
  }
  answers.set('sites.page', page)
  answers.set('water.site', {
    siteLabel: 'Quarry Close 2',
    softeners: [],
    tests: measuringPoints.map((point, i) => ({
      ...{ id: point, version: 1, day: `2026-0${i + 1}-03`, point, hardnessGpg: 18, freeChlorineMgL: 0.8, totalChlorineMgL: 1.2 },
      ...{ ironMgL: 0.4, manganeseMgL: 0.1, ph: 7.25, source: 'visit 2026-03-04' },
    })),
  })
  const dated = { day: '2026-05-01', bedId: 'b', tank: '10 × 54 in' }
  answers.set('sites.history', {
    more: true,
    happenings: [
      { ...dated, key: 'a', type: 'bed-began', earliestDay: '2012-01-01', asWritten: null, resinKind: 'gel-10', volumeFt3: 1.5 },
      ...endCauses.map((cause) => ({ ...dated, key: cause, type: 'bed-ended', earliestDay: null, cause })),
      ...visitOutcomes.map((outcome) => ({
        ...{ ...dated, key: outcome, type: 'visit', jobId: 'j', kind: 'rebed', state: 'closed', outcome, crew: 'A', notes: null },
      })),
      ...['nightly', 'import', 'supply', 'test', 'close-out', 'edit', 'unheard-of'].map((cause, i) => ({
        ...{ ...dated, key: cause, type: 'forecast', fromDue50: i ? '2027-01-01' : null, toDue50: i === 2 ? null : '2027-05-01', cause },
      })),
    ],
  })
  const shown = screen(<Site siteId="s" />)
  expect(left(shown)).toEqual([])
  expect(shown).toContain('Horario de visitas')
  expect(shown).toContain('desde 2:30')
  answers.set('sites.history', {
    more: true,
    happenings: [
      ...beadConditions.map((beadCondition) => ({
        ...{
          ...dated,
          key: beadCondition,
          type: 'inspection',
          beadCondition,
          capacityShare: 0.7,
          moistureShare: 0.5,
          pressureDropPsi: 8,
          notes: null,
        },
      })),
      ...measuringPoints.map((point) => ({
        ...{ ...dated, key: point, type: 'water-test', point, hardnessGpg: 18, freeChlorineMgL: 1, totalChlorineMgL: 2, ironMgL: 0.4 },
        source: 'import beds.csv line 3',
      })),
      ...jobStates.map((state) => ({ ...dated, key: state, type: 'job', jobId: 'j', kind: 'cleaning', state, reason: null })),
      ...recordedDisinfectants.map((disinfectant) => ({
        ...{
          ...dated,
          key: disinfectant,
          type: 'supply',
          supply: 'Fleetham',
          disinfectant,
          residualMgL: 1.5,
          source: 'visit 2026-03-04',
        },
      })),
      ...[true, false].map((began) => ({ ...dated, key: String(began), type: 'tenure', customerName: 'Fleetham', began })),
    ],
  })
  answers.set('water.site', { siteLabel: 'Quarry Close 2', softeners: [], tests: [] })
  answers.set('sites.page', {
    ...page,
    softeners: [],
    tenures: [],
    contacts: [],
    openJobs: [],
    supply: null,
    whom: { customerName: null, called: null },
  })
  expect(left(screen(<Site siteId="s" />))).toEqual([])
  answers.set('sites.history', { more: false, happenings: [] })
  answers.set('sites.page', { ...page, contacts: [], visitHours: { weekdays: [], from: null, until: '12:00' } })
  expect(left(screen(<Site siteId="s" />))).toEqual([])
})
