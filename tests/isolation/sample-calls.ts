import os from 'node:os'
import path from 'node:path'
import { newId } from '@almanac/runtime/ids'
import { DAY } from '../support/records.ts'
import { page, type Sample, type SampleIds, version } from './sample-call.ts'
import { archive, audit, closing, erase, exports, imports, merging } from './sample-calls-keeping.ts'
import { bedChoice, beds, reminders, sites, softeners, water } from './sample-calls-sites.ts'
import { PASSWORD } from './signed-in-call.ts'

const price = { minor: 18_500, per: 'year' }
const agreements: Record<string, Sample> = {
  ofSite: { roles: 'odt', input: (r) => ({ siteId: r.siteId }) },
  rounds: { roles: 'od', input: () => ({ month: '2027-01' }) },
  add: {
    roles: 'od',
    input: (r) => ({
      ...{ siteId: r.siteId, softenerId: r.softenerId, kind: 'salt', every: { count: 6, unit: 'week' } },
      ...{ firstDay: '2026-12-14', untilDay: null, price, notes: '' },
    }),
    other: { notes: 'by the side door' },
  },
  renew: {
    roles: 'od',
    input: (r) => ({ agreementId: r.agreementId, version, fromDay: '2027-01-16', untilDay: '2028-01-15', price }),
    other: { untilDay: null },
  },
  end: { roles: 'od', input: (r) => ({ agreementId: r.agreementId, version, lastDay: DAY, why: 'asked' }), other: { why: 'mistake' } },
  settleTurn: {
    roles: 'od',
    input: (r) => ({ agreementId: r.agreementId, dueDay: '2026-12-15', version: 0, outcome: 'skipped', doneDay: null, reason: 'away' }),
    other: { reason: 'moved' },
  },
  propose: {
    roles: 'od',
    input: (r) => ({ month: '2026-12', turns: [{ agreementId: r.agreementId, dueDay: '2026-12-15' }] }),
    other: { month: '2027-01' },
  },
}

const crew = (r: SampleIds) => ({
  colleagueIds: [r.colleagueId, r.otherColleagueId],
  vehicleId: r.vehicleId,
  from: '08:00',
  until: '16:00',
})

const person = {
  ...{ name: 'Ruth Ames', doesAll: false, skills: ['lifting'], startsAtHome: false, home: null, overtimeMinorPerHour: 5_200 },
  shifts: [{ weekday: 1, from: '08:00', until: '16:00' }],
  breaks: [{ from: '11:30', until: '13:00', minutes: 30 }],
}
const vehicle = { name: 'van 3', volumeFt3: 12, weightLb: 1_400 }
const crews: Record<string, Sample> = {
  list: { roles: 'od' },
  own: { roles: 'odt' },
  addPerson: { roles: 'od', input: () => person, other: { name: 'Otis Brand' } },
  changePerson: {
    roles: 'od',
    input: (r) => ({ ...person, colleagueId: r.colleagueId, version, left: false, personId: r.personId }),
    other: { doesAll: true },
  },
  addVehicle: { roles: 'od', input: () => vehicle, other: { name: 'van 4' } },
  changeVehicle: { roles: 'od', input: (r) => ({ ...vehicle, vehicleId: r.vehicleId, version, left: false }), other: { weightLb: 900 } },
  addAbsence: {
    roles: 'od',
    input: (r) => ({ of: 'person', subjectId: r.colleagueId, fromDay: DAY, untilDay: null, word: 'training', confirmed: true }),
    other: { word: 'holiday' },
  },
  takeBackAbsence: { roles: 'od', input: (r) => ({ absenceId: r.absenceId, version }) },
}

const call = {
  ...{
    callerName: '',
    callerPhone: '',
    sees: 'hard-water',
    words: 'soap does not lather',
    advised: '',
    stillSoft: false,
    hardSinceDay: null,
  },
  follows: { what: 'visit', visit: 'repair' },
}
const calls: Record<string, Sample> = {
  list: { roles: 'od', input: () => page },
  callBacks: { roles: 'od' },
  ofSite: { roles: 'od', input: (r) => ({ siteId: r.siteId }) },
  record: { roles: 'od', input: (r) => ({ ...call, siteId: r.siteId, softenerId: r.softenerId }), other: { words: 'no lather' } },
  settle: { roles: 'od', input: (r) => ({ callBackId: r.callBackId, version, outcome: 'talked', note: '' }) },
}

const daySheets: Record<string, Sample> = {
  day: { roles: 'od', input: () => ({ day: DAY }) },
  fits: { roles: 'od', input: (r) => ({ crewDayId: r.crewDayId }) },
  crewChoices: { roles: 'od', input: () => ({ day: DAY }) },
  open: { roles: 'od', input: (r) => ({ ...crew(r), day: '2026-12-07', name: 'Pair two' }), other: { name: 'Pair three' } },
  copy: { roles: 'od', input: () => ({ day: '2026-12-07' }), other: { day: '2026-12-08' } },
  change: { roles: 'od', input: (r) => ({ ...crew(r), crewDayId: r.otherCrewDayId, version, name: 'Pair two', notes: null }) },
}

const due: Record<string, Sample> = {
  desk: { roles: 'od' },
  months: { roles: 'od', input: (r) => ({ waterSupplyId: r.waterSupplyId }) },
  beds: { roles: 'od', input: (r) => ({ ...page, waterSupplyId: r.waterSupplyId, sort: 'chance' }) },
}

const find: Record<string, Sample> = { look: { roles: 'odt', input: () => ({ q: 'orchard' }) } }

const settings = {
  ...{
    reminderLeadDays: 45,
    rebedsPerMonth: 12,
    dayStart: '07:30',
    dayEnd: '16:00',
    riskLimit: 0.2,
    yardLatitude: 41.71,
    yardLongitude: -88.42,
  },
  ...{ plannedRebedMinor: 42_000, failureMinor: 61_000, beadsMinor: 90_000, overtimeMinorPerHour: 5_500 },
}

const pace = { factor: 1.1, shortFactor: 1.2, longFactor: 1, roadFactor: 1, drives: 40, days: 8 }

/** A PNG of one pixel. */
const ONE_PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg=='

const firm: Record<string, Sample> = {
  figures: { roles: 'odt' },
  changeFigure: {
    roles: 'o',
    input: () => ({ key: 'allowance:iron', version: 0, value: 3, note: 'soft wells here' }),
    other: { value: 5 },
  },
  resetFigure: { roles: 'o', input: () => ({ key: 'gravel-from-ft3', version, note: null }), other: { note: 'as others do' } },
  drives: { roles: 'o' },
  takeDrives: { roles: 'o', input: () => ({ version: 0, pace }), other: { version: 1 } },
  settings: { roles: 'o' },
  holidays: { roles: 'o', input: () => ({ area: 'US' }) },
  changeSettings: { roles: 'o', input: () => ({ ...settings, version, note: null }), other: { rebedsPerMonth: 13 } },
  changeLogo: { roles: 'o', input: () => ({ version, picture: ONE_PIXEL }), other: { picture: null } },
  letterhead: { roles: 'odt' },
  history: { roles: 'o', input: () => page },
}

const guides: Record<string, Sample> = {
  ofSite: { roles: 'od', input: (r) => ({ siteId: r.siteId }) },
  begin: { roles: 'od', input: (r) => ({ softenerId: r.softenerId }) },
  withdraw: { roles: 'od', input: (r) => ({ guideId: r.guideId, version }) },
  sendSteps: { roles: 'od', input: (r) => ({ guideId: r.guideId, version, bedId: r.bedId }) },
  releaseHold: { roles: 'od', input: (r) => ({ guideId: r.holdGuideId, version }) },
  fixHold: {
    roles: 'od',
    input: (r) => ({ guideId: r.holdGuideId, version, toFix: 'Hold it to the light.' }),
    other: { toFix: 'Closer.' },
  },
  visitInstead: { roles: 'od', input: (r) => ({ guideId: r.holdGuideId, version }) },
  orderKit: { roles: 'od', input: (r) => ({ bedId: r.bedId, way: 'shipped' }), other: { way: 'collected' } },
}

const jobs: Record<string, Sample> = {
  list: { roles: 'odt', input: () => ({ ...page, state: 'proposed' }) },
  overview: { roles: 'odt' },
  get: { roles: 'odt', input: (r) => ({ jobId: r.proposedJobId }) },
  places: { roles: 'od', input: (r) => ({ jobId: r.proposedJobId }) },
  choices: { roles: 'od', input: (r) => ({ siteId: r.siteId }) },
  propose: { roles: 'od', input: (r) => ({ beds: [{ bedId: r.bedId }], kind: 'rebed' }) },
  proposePlanned: { roles: 'od', input: (r) => ({ planId: r.planId, month: '2027-01' }), other: { month: '2027-02' } },
  proposeOne: {
    roles: 'od',
    input: (r) => ({
      siteId: r.siteId,
      softenerId: r.softenerId,
      bedId: r.bedId,
      kind: 'inspection',
      after: { jobId: r.proposedJobId, leastDays: 1 },
    }),
  },
  book: {
    roles: 'od',
    input: (r) => ({ jobId: r.proposedJobId, jobVersion: 1, crewDayId: r.crewDayId, at: '13:00', confirmed: ['outside-hours'] }),
  },
  moveVisit: {
    roles: 'od',
    input: (r) => ({ visitId: r.visitId, version, crewDayId: r.otherCrewDayId, at: '10:00', confirmed: ['outside-hours'] }),
  },
  callOffVisit: { roles: 'od', input: (r) => ({ visitId: r.visitId, version }) },
  missVisit: { roles: 'od', input: (r) => ({ visitId: r.lateVisitId, version }) },
  sayUntil: { roles: 'od', input: (r) => ({ visitId: r.visitId, version, until: '16:30' }), other: { until: '16:45' } },
  change: {
    roles: 'od',
    input: (r) => ({
      ...{ jobId: r.proposedJobId, version, minutes: 95, crewSize: 1, needsVehicle: null },
      ...{ dueEarliest: null, dueLatest: '2027-02-01', notes: 'side gate' },
    }),
    other: { minutes: 100 },
  },
  hold: { roles: 'od', input: (r) => ({ jobId: r.proposedJobId, version, reason: 'waits for a tube' }) },
  callOff: { roles: 'od', input: (r) => ({ jobId: r.proposedJobId, version, reason: 'the house was sold' }) },
  resume: { roles: 'od', input: (r) => ({ jobId: r.heldJobId, version }) },
}

const pictures: Record<string, Sample> = {
  begin: {
    roles: 'odt',
    input: (r) => ({
      ...{ visitId: r.visitId, kind: 'label', takenAt: '2026-12-02T15:00:00.000Z' },
      ...{ bytes: 1200, sha256: 'a'.repeat(64) },
    }),
    other: { kind: 'as-left' },
  },
  noteUnsigned: {
    roles: 'odt',
    input: (r) => ({ visitId: r.visitId, answer: 'not-there', at: '2026-12-02T15:00:00.000Z' }),
    other: { answer: 'declined' },
  },
  ofJob: { roles: 'odt', input: (r) => ({ jobId: r.rebedJobId }) },
  ofBed: { roles: 'odt', input: (r) => ({ bedId: r.rebedBedId }) },
}

const reports: Record<string, Sample> = {
  readers: { roles: 'odt', input: (r) => ({ visitId: r.closedVisitId }) },
  send: {
    roles: 'odt',
    input: (r) => ({ visitId: r.closedVisitId, contactId: r.contactId }),
    env: {
      SMTP_URL: 'smtp://127.0.0.1:9',
      MAIL_FROM: 'almanac@firm.example',
      DATA_DIR: path.join(os.tmpdir(), 'almanac-sample-files'),
    },
  },
}

const plans: Record<string, Sample> = {
  start: {
    roles: 'od',
    input: (r) => ({ fromDay: DAY, days: 2, asked: { kind: 'other-vehicle', crewDayId: r.crewDayId, vehicleId: r.vehicleId } }),
    also: {
      'asked.missingIds.[]': (r) => ({
        fromDay: DAY,
        days: 2,
        asked: { kind: 'fewer-people', crewDayId: r.crewDayId, missingIds: [r.colleagueId] },
      }),
    },
  },
  get: { roles: 'od', input: (r) => ({ planId: r.planId }) },
  stop: { roles: 'od', input: (r) => ({ planId: r.planId, version }) },
  openCrews: { roles: 'od', input: (r) => ({ planId: r.crewsPlanId, version, crews: [0] }) },
  accept: {
    roles: 'od',
    input: (r) => ({ planId: r.readyPlanId, version, differenceIds: [r.visitId] }),
    other: { differenceIds: ['01a21249-12c6-7330-82bb-e9d3d4ae6ca8'] },
  },
}

const people: Record<string, Sample> = {
  list: { roles: 'o' },
  invite: {
    roles: 'o',
    input: (r) => ({ name: 'Otis Brand', email: null, role: 'technician', colleagueId: r.otherColleagueId, byMail: false }),
  },
  withdraw: { roles: 'o', input: (r) => ({ invitationId: r.invitationId }) },
  changeRole: { roles: 'o', input: (r) => ({ personId: r.otherPersonId, role: 'dispatcher', seen: 'technician' }) },
  endAccess: { roles: 'o', input: (r) => ({ personId: r.otherPersonId }) },
  endSession: { roles: 'o', input: (r) => ({ sessionId: r.otherSessionId }) },
  passwordLink: { roles: 'o', input: (r) => ({ personId: r.otherPersonId }) },
}

const session: Record<string, Sample> = {
  list: { roles: 'odt' },
  setLanguage: { roles: 'odt', input: () => ({ language: 'es' }) },
  changeEmail: { roles: 'odt', input: () => ({ email: `${newId()}@firm.example`, password: PASSWORD }) },
  switchCompany: { roles: 'odt', input: (r) => ({ companyId: r.companyId }) },
  end: { roles: 'odt', input: (r) => ({ sessionId: r.sessionId }) },
  passkeys: { roles: 'odt' },
  removePasskey: { roles: 'odt', input: (r) => ({ passkeyId: r.passkeyId }) },
}

const materials: Record<string, Sample> = {
  ofJob: { roles: 'odt', input: (r) => ({ jobId: r.deliveryJobId }) },
  set: {
    roles: 'od',
    input: (r) => ({ jobId: r.deliveryJobId, jobVersion: version, stockItemId: r.stockItemId, quantity: 2 }),
    other: { quantity: 3 },
  },
  handOver: { roles: 'od', input: (r) => ({ jobId: r.deliveryJobId, jobVersion: version, way: 'collected' }), other: { way: 'shipped' } },
  takeBack: { roles: 'od', input: (r) => ({ lineId: r.handedLineId, version, quantity: 1 }) },
}

const item = { name: 'Resin 8 %', bagFt3: 1, resinKind: 'gel-8', tubeOdIn: null, priceMinor: 9_800, leadDays: 21 }
const stores: Record<string, Sample> = {
  orders: { roles: 'odt' },
  loadList: { roles: 'odt', input: (r) => ({ crewDayId: r.crewDayId }) },
  pick: { roles: 'odt', input: (r) => ({ crewDayId: r.crewDayId }) },
  addItem: { roles: 'od', input: () => ({ ...item, kind: 'resin', unit: 'bag', onHand: 4 }), other: { name: 'Resin 8 %, half a bag' } },
  addUsualItems: { roles: 'od', input: () => ({}) },
  changeItem: { roles: 'od', input: (r) => ({ ...item, stockItemId: r.stockItemId, version }) },
  archiveItem: { roles: 'od', input: (r) => ({ stockItemId: r.emptyItemId, version }) },
  items: { roles: 'odt', input: () => page },
  movements: { roles: 'odt', input: () => page },
  receive: { roles: 'od', input: (r) => ({ stockItemId: r.stockItemId, quantity: 4 }) },
  count: { roles: 'od', input: (r) => ({ stockItemId: r.stockItemId, version, counted: 5 }) },
}

const record = (r: SampleIds) => ({
  ...{ visitId: r.rebedVisitId, jobKind: 'rebed', outcome: 'no-access', workDay: '2026-12-02', checks: [], measurements: [] },
  ...{ startedAt: '2026-12-02T15:00:00.000Z', finishedAt: '2026-12-02T15:20:00.000Z', oldBed: null, newBed: null },
  partsUsed: [{ stockItemId: r.stockItemId, name: 'Resin 10 %', quantity: 1, unit: 'resin-bag' }],
  ...{ reason: 'nobody was at home', hardnessReason: '', notes: '' },
})

const visits: Record<string, Sample> = {
  today: { roles: 'odt', input: () => ({}) },
  get: { roles: 'odt', input: (r) => ({ visitId: r.visitId }) },
  start: { roles: 'odt', input: (r) => ({ visitId: r.visitId, version }) },
  closeOut: { roles: 'odt', input: (r) => ({ record: record(r) }) },
}

const week: Record<string, Sample> = {
  towns: { roles: 'od', input: (r) => ({ day: '2026-12-03', kind: 'rebed', jobId: r.proposedJobId }) },
}

const field: Record<string, Sample> = {
  send: {
    roles: 'odt',
    input: (r) => ({
      ...{ queueId: '018f0000-0000-7000-8000-000000000001', sequence: 1, oldest: 1, form: 1, kind: 'start', body: { visitId: r.visitId } },
      ...{ madeAt: '2026-12-02T15:00:00.000Z', sentAt: '2026-12-02T16:00:00.000Z' },
    }),
    other: { kind: 'undo-start' },
  },
  setAside: { roles: 'od', input: () => page },
  settle: { roles: 'od', input: (r) => ({ asideId: r.asideId, version }) },
}

const windows: Record<string, Sample> = {
  ofJob: { roles: 'odt', input: (r) => ({ jobId: r.offeredJobId }) },
  offer: {
    roles: 'od',
    input: (r) => ({
      ...{ jobId: r.proposedJobId, jobVersion: 1, windowMinutes: 120, holdHours: 4 },
      places: [{ crewDayId: r.crewDayId, at: '12:00' }],
    }),
  },
  confirm: { roles: 'od', input: (r) => ({ offerId: r.offerId, version, visitId: r.offeredVisitId }) },
  promise: { roles: 'od', input: (r) => ({ visitId: r.visitId, version, from: '08:00', until: '12:00' }) },
  withdraw: { roles: 'od', input: (r) => ({ offerId: r.offerId, version }) },
  feeds: { roles: 'odt' },
  beginFeed: { roles: 'odt', input: () => ({}) },
  beginOfficeFeed: { roles: 'od', input: () => ({}) },
  endFeed: { roles: 'odt', input: (r) => ({ feedId: r.feedId, version }) },
}

const forecasts: Record<string, Sample> = {
  trackRecord: { roles: 'o' },
  checkAgain: { roles: 'o', input: () => ({}) },
  policy: { roles: 'o', input: (r) => ({ waterSupplyId: r.waterSupplyId, resinKind: 'gel-8', fixedAgeYears: 12 }) },
  plan: { roles: 'od' },
}

/** Every procedure, by domain. One that is missing here fails the isolation test. */
export const SAMPLES: Record<string, Record<string, Sample>> = {
  ...{
    agreements,
    archive,
    closing,
    audit,
    bedChoice,
    beds,
    calls,
    crews,
    daySheets,
    due,
    erase,
    exports,
    merging,
    field,
    find,
    firm,
    forecasts,
    guides,
    imports,
    jobs,
    materials,
    people,
    pictures,
    plans,
    reminders,
    reports,
    session,
    sites,
    softeners,
    stores,
    visits,
    water,
    week,
    windows,
  },
}

/** The sample's input as it is sent: a command gets an id of its own. */
export function inputOf(sample: Sample, ids: SampleIds, isCommand: boolean): Record<string, unknown> | undefined {
  const input = sample.input?.(ids)
  return isCommand ? { ...input, commandId: newId() } : input
}
