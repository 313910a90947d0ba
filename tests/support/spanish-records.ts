import { recordedDisinfectants } from '@almanac/records/disinfectant'
import { jobKinds } from '@almanac/records/job-kind'
import { jobStates } from '@almanac/records/job-state'
import { signings } from '@almanac/records/signing'
import { visitOutcomes } from '@almanac/records/visit-outcome'

/** What people wrote themselves, in records that pages are shown with. */
export const OWN = ['Quarry Close 2', 'Marta Quill', 'Fleetham', 'beds.csv', 'Ring twice']

export const TANK = { id: 't', version: 1, position: 1, diameterIn: 10, heightIn: 54, nominalGrains: 48000, sizeAsWritten: null }
export const LINE = {
  ...{ id: 'b', resinKind: 'gel-8' as const, volumeFt3: 1.5, beganEarliest: '2012-01-01', beganLatest: '2012-12-31', beganAsWritten: null },
  ...{ lastSeenDay: '2026-05-01', endedEarliest: null, endedLatest: null, endCause: null },
  ...{ due10Day: '2026-01-01', due50Day: '2027-03-01', due90Day: '2031-01-01', chance12Months: 0.4 },
}
export const ENDED = { ...LINE, id: 'e', endedEarliest: '2012-01-01', endedLatest: '2012-12-31', beganEarliest: null, beganLatest: null }
export const RECORD = {
  ...{ bedId: 'b', resinKind: 'gel-8' as const, volumeFt3: 1.5, gravelLb: 18, tubeCutIn: null, diameterIn: 10, heightIn: 54 },
  ...{ nominalGrains: null, sizeAsWritten: null, tubeOdIn: null, valveCardId: null, backwashGpm: 2.4 },
}
const CALLED = { name: 'Marta Quill', role: 'occupier', phone: '555 0134', otherPhones: ['555 0135'], mayCall: false }
export const WHOM = { customerName: 'Fleetham', called: CALLED }
export const jobLines = jobStates.map((state, i) => ({
  ...{ id: state, kind: jobKinds[i] ?? 'rebed', state, dueEarliest: null },
  ...{ dueLatest: i % 2 ? '2027-01-01' : null, visitDay: i % 3 ? null : '2026-12-01' },
}))
export const PERIODS = recordedDisinfectants.map((disinfectant, i) => ({
  ...{ id: disinfectant, version: 1, fromDay: i === 0 ? null : `202${i}-01-01`, disinfectant, residualMgL: i === 3 ? null : 1.25 },
  ...{ hardnessGpg: i === 2 ? null : 18, ironMgL: i === 2 ? null : 0.4, entered: { hardness: { value: 308.5, unit: 'mg/L' } } },
  source: ['visit 2026-03-04', 'import beds.csv line 3', 'said on a call, 2026-03-04', 'close-out 2026-03-04'][i] ?? '',
}))
export const PROOFS = visitOutcomes.map((outcome, i) => ({
  ...{ visitId: outcome, jobId: 'j', day: '2026-05-03', kind: jobKinds[i] ?? 'rebed', state: 'closed', outcome, coming: i % 3 },
  photographs: (['label', 'as-found', 'old-bed', 'as-left'] as const).map((kind) => ({ id: kind, kind, takenAt: '', width: 4, height: 3 })),
  signature: { answer: signings[i % 3] ?? 'signed', name: i % 2 ? null : 'Marta Quill', at: '', pictureId: i % 2 ? null : 'p' },
}))
/** A job of each kind. */
export const JOBS = jobKinds.map((kind, i) => ({
  ...{
    id: kind,
    version: 1,
    kind,
    state: 'booked',
    siteId: 's',
    siteLabel: 'Quarry Close 2',
    town: 'Fleetham',
    bed: i % 2 ? RECORD : null,
  },
  ...{
    dueEarliest: i % 3 ? null : '2027-05-01',
    dueLatest: i % 2 ? '2026-01-01' : null,
    minutes: 160,
    crewSize: (i % 3) + 1,
    needsVehicle: null,
  },
  ...{ nextVisit: i === 0 ? { startsAt: '2026-12-01T15:00:00Z', day: '2026-12-01', crewName: 'A' } : null, chance3Months: 0.2 },
}))
