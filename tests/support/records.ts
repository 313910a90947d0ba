import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'

/** The instant the records are written for, and the two days of the day sheets in them: a Thursday and a Friday in Phoenix, UTC-7. */
export const NOW = '2026-12-02T16:00:00Z'
export const DAY = '2026-12-03'
const NEXT_DAY = '2026-12-04'

const NAMES = [
  ...['customerId', 'otherCustomerId', 'contactId', 'consentId', 'siteId', 'tenureId', 'waterSupplyId', 'periodId', 'testId'],
  ...['softenerId', 'tankId', 'valveId', 'brineTankId', 'preTreatmentId', 'bedId', 'rebedSoftenerId', 'rebedTankId', 'rebedBedId'],
  ...['inspectionId', 'colleagueId', 'otherColleagueId', 'vehicleId', 'crewDayId', 'otherCrewDayId', 'proposedJobId', 'heldJobId'],
  ...['exportId', 'freeColleagueId', 'callId', 'callBackId', 'lateJobId', 'lateVisitId', 'lateCrewDayId'],
  ...[
    'bookedJobId',
    'visitId',
    'rebedJobId',
    'rebedVisitId',
    'stockItemId',
    'emptyItemId',
    'movementId',
    'discrepancyId',
    'runId',
    'forecastId',
  ],
  ...[
    'changeId',
    'fitId',
    'draftId',
    'backtestId',
    'planId',
    'plannedId',
    'monthId',
    'groupId',
    'reminderId',
    'messageId',
    'answerId',
    'batchId',
    'draftBatchId',
    'rowId',
    'draftRowId',
    'pieceId',
    'settingsId',
    'figureId',
    'appliedId',
    'auditId',
    'memberId',
  ],
  ...[
    'otherMemberId',
    'assignmentId',
    'rebedAssignmentId',
    'useId',
    'offerId',
    'offeredJobId',
    'offeredVisitId',
    'feedId',
    'reservationId',
    'planId',
    'readyPlanId',
    'crewsPlanId',
    'absenceId',
    'asideId',
    'pictureId',
    'signatureId',
    'signedPictureId',
    'ownTextId',
    'mergingId',
    'spareSupplyId',
    'agreementId',
    'termId',
    'turnId',
    'turnJobId',
    'deliveryJobId',
    'materialLineId',
    'handedLineId',
    'guideId',
    'holdGuideId',
    'guidePictureId',
    'entryId',
    'decisionId',
  ],
] as const

/** The ids of a firm's records by name; the same names in every firm. */
export type Records = Record<(typeof NAMES)[number], string>

type Own = { companyId: string }

async function writePlaces(tx: Tx, own: Own, r: Records): Promise<void> {
  await tx.companySettings.create({ data: { ...own, id: r.settingsId } })
  await tx.firmFigure.create({ data: { ...own, id: r.figureId, key: 'gravel-from-ft3', value: 2 } })
  await tx.waterSupply.create({ data: { ...own, id: r.waterSupplyId, name: 'Larkmoor town', kind: 'town' } })
  await tx.waterSupply.create({ data: { ...own, id: r.spareSupplyId, name: 'Larkmoor mains', kind: 'town' } })
  const period = {
    fromDay: dateOf('2010-01-01'),
    disinfectant: 'free-chlorine',
    residualMgL: 1,
    hardnessGpg: 15,
    entered: {},
    source: 'notice',
  }
  await tx.supplyPeriod.create({ data: { ...own, id: r.periodId, waterSupplyId: r.waterSupplyId, ...period } })
  await tx.customer.create({ data: { ...own, id: r.customerId, name: 'Hanna Vale' } })
  await tx.customer.create({ data: { ...own, id: r.otherCustomerId, name: 'Otis Brand' } })
  const address = { label: 'Orchard Lane 14', street: 'Orchard Lane 14', town: 'Larkmoor' }
  await tx.site.create({ data: { ...own, id: r.siteId, ...address, waterSupplyId: r.waterSupplyId } })
  const person = { role: 'payer', name: 'Hanna Vale', phone: '555 0134', email: 'hanna@orchard.example' }
  await tx.contact.create({ data: { ...own, id: r.contactId, customerId: r.customerId, siteId: r.siteId, ...person } })
  const consent = { channel: 'email', granted: true, source: 'call', sinceDay: dateOf('2024-05-01') }
  await tx.consent.create({ data: { ...own, id: r.consentId, contactId: r.contactId, ...consent } })
  await tx.tenure.create({ data: { ...own, id: r.tenureId, siteId: r.siteId, customerId: r.customerId, fromDay: dateOf('2015-02-01') } })
  await tx.searchToken.create({ data: { ...own, token: 'orchard', siteId: r.siteId } })
}

async function writeEquipment(tx: Tx, own: Own, r: Records): Promise<void> {
  const bed = { volumeFt3: 1.5, resinKind: 'gel-8', beganEarliest: dateOf('2014-03-01'), beganLatest: dateOf('2014-03-01') }
  for (const [softenerId, tankId, bedId] of [
    [r.softenerId, r.tankId, r.bedId],
    [r.rebedSoftenerId, r.rebedTankId, r.rebedBedId],
  ] as const) {
    await tx.softener.create({ data: { ...own, id: softenerId, siteId: r.siteId, label: 'House softener' } })
    await tx.tank.create({ data: { ...own, id: tankId, softenerId, diameterIn: 10, heightIn: 54 } })
    await tx.bed.create({ data: { ...own, id: bedId, tankId, ...bed } })
  }
  await tx.valve.create({ data: { ...own, id: r.valveId, softenerId: r.softenerId, tankId: r.tankId, label: 'valve', control: 'meter' } })
  await tx.brineTank.create({ data: { ...own, id: r.brineTankId, softenerId: r.softenerId, label: 'salt' } })
  await tx.preTreatment.create({ data: { ...own, id: r.preTreatmentId, softenerId: r.softenerId, kind: 'carbon', source: 'call' } })
  await tx.inspection.create({ data: { ...own, id: r.inspectionId, bedId: r.bedId, day: dateOf('2025-06-01'), source: 'visit' } })
  const test = { day: dateOf('2025-06-01'), point: 'raw', hardnessGpg: 15, entered: {}, source: 'typed in' }
  await tx.waterTest.create({ data: { ...own, id: r.testId, siteId: r.siteId, softenerId: r.softenerId, ...test } })
}

async function writeWork(tx: Tx, own: Own, r: Records): Promise<void> {
  const hours = (day: string) => ({ startsAt: new Date(`${day}T15:00:00Z`), endsAt: new Date(`${day}T23:59:00Z`) })
  await tx.colleague.create({ data: { ...own, id: r.colleagueId, name: 'Ruth Ames' } })
  await tx.colleague.create({ data: { ...own, id: r.otherColleagueId, name: 'Callum Orr' } })
  await tx.colleague.create({ data: { ...own, id: r.freeColleagueId, name: 'Dunstan Pell', archivedAt: dateOf('2025-05-01') } })
  await tx.vehicle.create({ data: { ...own, id: r.vehicleId, name: 'van 2', volumeFt3: 8, weightLb: 900 } })
  for (const [id, day, memberId, colleagueId] of [
    [r.crewDayId, DAY, r.memberId, r.colleagueId],
    [r.otherCrewDayId, NEXT_DAY, r.otherMemberId, r.otherColleagueId],
  ] as const) {
    await tx.crewDay.create({ data: { ...own, id, day: dateOf(day), name: 'Pair one', vehicleId: r.vehicleId, ...hours(day) } })
    await tx.crewDayMember.create({ data: { ...own, id: memberId, crewDayId: id, colleagueId } })
  }
  const job = { siteId: r.siteId, minutes: 60, crewSize: 1, createdAt: new Date('2026-11-02T16:00:00Z') }
  const visitJob = { ...job, kind: 'annual-visit' }
  await tx.job.create({ data: { ...own, id: r.proposedJobId, ...visitJob, state: 'proposed' } })
  await tx.job.create({ data: { ...own, id: r.heldJobId, ...visitJob, state: 'held', stateReason: 'waits for a part' } })
  await tx.job.create({ data: { ...own, id: r.bookedJobId, ...visitJob, state: 'booked' } })
  const rebed = { softenerId: r.rebedSoftenerId, bedId: r.rebedBedId, kind: 'rebed', state: 'under-way' }
  await tx.job.create({ data: { ...own, id: r.rebedJobId, ...job, ...rebed } })
  for (const [id, jobId, state, from, until, assignmentId] of [
    [r.visitId, r.bookedJobId, 'booked', 'T16:00:00Z', 'T17:00:00Z', r.assignmentId],
    [r.rebedVisitId, r.rebedJobId, 'under-way', 'T18:00:00Z', 'T19:00:00Z', r.rebedAssignmentId],
  ] as const) {
    const span = { startsAt: new Date(DAY + from), endsAt: new Date(DAY + until) }
    await tx.visit.create({ data: { ...own, id, jobId, crewDayId: r.crewDayId, state, ...span } })
    await tx.assignment.create({ data: { ...own, id: assignmentId, visitId: id, colleagueId: r.colleagueId, ...span } })
    if (state === 'booked') await tx.vehicleUse.create({ data: { ...own, id: r.useId, visitId: id, vehicleId: r.vehicleId, ...span } })
  }
}

async function writeAbsence(tx: Tx, own: Own, r: Records): Promise<void> {
  const days = { fromDay: dateOf('2026-12-20'), untilDay: dateOf('2026-12-31') }
  await tx.absence.create({ data: { ...own, id: r.absenceId, colleagueId: r.otherColleagueId, ...days } })
}

/** A visit that was booked for yesterday and never begun. */
async function writeLateVisit(tx: Tx, own: Own, r: Records): Promise<void> {
  const hours = { startsAt: new Date('2026-12-01T15:00:00Z'), endsAt: new Date('2026-12-01T23:59:00Z') }
  await tx.crewDay.create({ data: { ...own, id: r.lateCrewDayId, day: dateOf('2026-12-01'), name: 'Pair one', ...hours } })
  const job = { siteId: r.siteId, minutes: 60, crewSize: 1, kind: 'annual-visit', state: 'booked' }
  await tx.job.create({ data: { ...own, id: r.lateJobId, ...job } })
  const span = { startsAt: new Date('2026-12-01T16:00:00Z'), endsAt: new Date('2026-12-01T17:00:00Z') }
  await tx.visit.create({ data: { ...own, id: r.lateVisitId, jobId: r.lateJobId, crewDayId: r.lateCrewDayId, state: 'booked', ...span } })
}

async function writeCalls(tx: Tx, own: Own, r: Records, personId: string): Promise<void> {
  const about = { siteId: r.siteId, customerId: r.customerId, sees: 'hard-water', follows: 'call-back' }
  await tx.phoneCall.create({ data: { ...own, id: r.callId, at: new Date(NOW), personId, ...about } })
  const back = { cause: 'asked', state: 'open', dueDay: dateOf(DAY), createdAt: new Date(NOW) }
  await tx.callBack.create({ data: { ...own, id: r.callBackId, callId: r.callId, siteId: r.siteId, ...back } })
}

/** A yearly visit and a turn of it with its job. */
async function writeAgreement(tx: Tx, own: Own, r: Records): Promise<void> {
  const of = { siteId: r.siteId, softenerId: r.softenerId, customerId: r.customerId }
  const days = { firstDay: dateOf('2020-12-15') as Date, countsFrom: dateOf('2025-01-01') as Date }
  await tx.agreement.create({
    data: { ...own, id: r.agreementId, ...of, kind: 'visits', rule: 'FREQ=YEARLY', ...days, createdAt: new Date(NOW) },
  })
  const term = { fromDay: days.countsFrom, untilDay: dateOf('2027-01-15'), priceMinor: 18_500, pricePer: 'year', createdAt: new Date(NOW) }
  await tx.agreementTerm.create({ data: { ...own, id: r.termId, agreementId: r.agreementId, ...term } })
  const job = { siteId: r.siteId, minutes: 60, crewSize: 1, kind: 'annual-visit', state: 'proposed' }
  await tx.job.create({ data: { ...own, id: r.turnJobId, ...job } })
  const turn = { dueDay: dateOf('2025-12-15') as Date, state: 'proposed', jobId: r.turnJobId }
  await tx.agreementTurn.create({ data: { ...own, id: r.turnId, agreementId: r.agreementId, ...turn } })
}

async function writeGuide(tx: Tx, own: Own, r: Records, personId: string): Promise<void> {
  const days = { createdAt: new Date(NOW), linkUntil: new Date('2026-12-09T16:00:00Z') }
  await tx.ownerGuide.create({ data: { ...own, id: r.guideId, softenerId: r.softenerId, personId, ...days } })
  const decision = { verdict: 'owner-with-helper', answers: {}, reasons: ['Mind the weight.'], law: 'Township, by phone' }
  await tx.ownerDecision.create({ data: { ...own, id: r.decisionId, bedId: r.bedId, personId, at: new Date(NOW), ...decision } })
  const entry = { measure: 'around', valueIn: 31.5, entered: { value: 31.5, unit: 'in' }, at: new Date(NOW) }
  await tx.guideEntry.create({ data: { ...own, id: r.entryId, guideId: r.guideId, ...entry } })
  const at = { state: 'looking', bedId: r.bedId, step: 'cap-out' }
  await tx.ownerGuide.create({ data: { ...own, id: r.holdGuideId, softenerId: r.softenerId, personId, ...days, ...at } })
}

async function writeOffer(tx: Tx, own: Own, r: Records, personId: string): Promise<void> {
  const job = { siteId: r.siteId, minutes: 60, crewSize: 1, kind: 'annual-visit', state: 'proposed' }
  await tx.job.create({ data: { ...own, id: r.offeredJobId, ...job } })
  const span = { startsAt: new Date(`${DAY}T20:00:00Z`), endsAt: new Date(`${DAY}T21:00:00Z`) }
  const offer = { jobId: r.offeredJobId, state: 'open', createdAt: new Date(NOW), expiresAt: new Date(`${DAY}T02:00:00Z`) }
  await tx.windowOffer.create({ data: { ...own, id: r.offerId, ...offer } })
  const arrival = { arriveFrom: span.startsAt, arriveUntil: new Date(`${DAY}T22:00:00Z`) }
  const visit = { jobId: r.offeredJobId, crewDayId: r.crewDayId, offerId: r.offerId, state: 'offered', ...span, ...arrival }
  await tx.visit.create({ data: { ...own, id: r.offeredVisitId, ...visit } })
  await tx.colleague.update({ where: { companyId_id: { companyId: own.companyId, id: r.colleagueId } }, data: { personId } })
  const days = { fromDay: dateOf(DAY), untilDay: dateOf(NEXT_DAY), createdAt: new Date(NOW), createdBy: personId }
  const asked = { kind: 'sheet-off', crewDayId: r.crewDayId }
  await tx.planProposal.create({ data: { ...own, id: r.planId, kind: 'sheet-off', asked, state: 'running', ...days } })
  const off = {
    id: r.visitId,
    jobId: r.visitId,
    kind: 'take-off',
    fromSheetId: r.crewDayId,
    toSheetId: null,
    startMinute: null,
    sentence: '',
  }
  const proposal = { differences: [off], spots: [], sentences: [], waiting: [], notes: [] }
  const ready = { kind: 'sheet-off', asked, state: 'ready', board: { sheets: [], jobs: [] }, proposal }
  await tx.planProposal.create({ data: { ...own, id: r.readyPlanId, ...ready, ...days } })
  const free = dateOf('2027-01-14')
  const crew = { handIds: [r.otherColleagueId], vanId: r.vehicleId, shift: { from: 480, to: 960 }, jobIds: [] }
  const crews = { kind: 'crews', asked: { kind: 'crews' }, state: 'ready', proposal: { crews: [crew], spareIds: [], tried: 1 } }
  await tx.planProposal.create({ data: { ...own, id: r.crewsPlanId, ...crews, ...days, fromDay: free, untilDay: free } })
  await tx.calendarFeed.create({ data: { ...own, id: r.feedId, colleagueId: r.colleagueId, createdAt: new Date(NOW) } })
}

async function writePictures(tx: Tx, own: Own, r: Records, personId: string): Promise<void> {
  const at = new Date(NOW)
  const sent = { takenAt: at, personId, sentBytes: 4, sentSha256: '0'.repeat(64), begunAt: at }
  const kept = { state: 'stored', bytes: 4, sha256: '0'.repeat(64), width: 2, height: 2, storedAt: at }
  await tx.picture.create({ data: { ...own, id: r.pictureId, visitId: r.rebedVisitId, kind: 'as-found', ...sent, ...kept } })
  await tx.picture.create({ data: { ...own, id: r.signedPictureId, visitId: r.rebedVisitId, kind: 'signature', state: 'coming', ...sent } })
  await tx.picture.create({ data: { ...own, id: r.guidePictureId, guideId: r.holdGuideId, kind: 'cap', ...sent, ...kept } })
  const signed = { visitId: r.rebedVisitId, answer: 'signed', name: 'Hanna Vale', at, personId, pictureId: r.signedPictureId }
  await tx.signature.create({ data: { ...own, id: r.signatureId, ...signed } })
}

async function writeRest(tx: Tx, own: Own, r: Records, personId: string): Promise<void> {
  const at = new Date(NOW)
  await tx.stockItem.create({
    data: { ...own, id: r.stockItemId, name: 'Resin 10 %', kind: 'resin', unit: 'resin-bag', bagFt3: 1, onHand: 6 },
  })
  await tx.stockItem.create({ data: { ...own, id: r.emptyItemId, name: 'Half bag', kind: 'other', unit: 'bag' } })
  await tx.movement.create({ data: { ...own, id: r.movementId, stockItemId: r.stockItemId, quantity: 6, reason: 'received', at } })
  const reservation = { visitId: r.rebedVisitId, stockItemId: r.stockItemId, quantity: 1, state: 'reserved' }
  await tx.kitReservation.create({ data: { ...own, id: r.reservationId, ...reservation } })
  const delivery = { siteId: r.siteId, kind: 'delivery', state: 'proposed', minutes: 20, crewSize: 1, createdAt: at }
  await tx.job.create({ data: { ...own, id: r.deliveryJobId, ...delivery } })
  const asked = { jobId: r.deliveryJobId, stockItemId: r.stockItemId, quantity: 2 }
  await tx.materialLine.create({ data: { ...own, id: r.materialLineId, ...asked, state: 'reserved' } })
  await tx.materialLine.create({ data: { ...own, id: r.handedLineId, ...asked, state: 'handed-over', way: 'collected', handedAt: at } })
  const gap = { stockItemId: r.stockItemId, movementId: r.movementId, expected: 5, found: 6, openedAt: at }
  await tx.discrepancy.create({ data: { ...own, id: r.discrepancyId, ...gap } })
  const run = { cause: 'nightly', asOfDay: dateOf('2026-12-02'), parametersVersion: 't', startedAt: at }
  await tx.forecastRun.create({ data: { ...own, id: r.runId, ...run } })
  const days = { due10Day: dateOf('2026-12-20'), due50Day: dateOf('2028-01-01'), due90Day: dateOf('2030-01-01'), asOfDay: run.asOfDay }
  const figures = { chance3Months: 0.12, chance12Months: 0.3, chance24Months: 0.5, chanceAlreadyFailed: 0.02, weakness: 2 }
  const lists = { monthChances: new Uint8Array(), drivers: [], assumptions: [], missing: [] }
  const place = { bedId: r.bedId, siteId: r.siteId, waterSupplyId: r.waterSupplyId, runId: r.runId, computedAt: at }
  await tx.bedForecast.create({ data: { ...own, id: r.forecastId, ...place, ...days, ...figures, ...lists } })
  await tx.forecastChange.create({ data: { ...own, id: r.changeId, bedId: r.bedId, runId: r.runId, at, cause: 'supply' } })
  const fit = {
    version: 'fit-1',
    asOfDay: run.asOfDay,
    startedAt: at,
    finishedAt: at,
    dataHash: 'h',
    records: 0,
    failures: 0,
    endedBeds: 0,
  }
  await tx.forecastFit.create({
    data: { ...own, id: r.fitId, ...fit, leftOut: [], summary: {}, parameters: {}, fellBackBecause: 'No bed failed.' },
  })
  const draft = { runId: r.runId, bedId: r.bedId, computedAt: at, figures: {}, monthChances: new Uint8Array() }
  await tx.forecastDraft.create({ data: { ...own, id: r.draftId, ...draft } })
  const backtest = { asOfDay: run.asOfDay, startedAt: at, finishedAt: at, dataHash: 'h', origins: [], refusal: 'No bed has failed yet.' }
  await tx.forecastBacktest.create({ data: { ...own, id: r.backtestId, ...backtest } })
  await tx.forecastPlan.create({ data: { ...own, id: r.planId, runId: r.runId, finishedAt: at, limits: {}, refusal: 'Too few beds.' } })
  const planned = { bedId: r.bedId, month: dateOf('2027-01-01'), earliestMonth: dateOf('2026-12-01'), latestMonth: dateOf('2027-03-01') }
  await tx.plannedRebed.create({ data: { ...own, id: r.plannedId, planId: r.planId, ...planned } })
  const month = { month: dateOf('2027-01-01'), mean: 1, low: 0, middle: 1, high: 2, beds: 1 }
  await tx.forecastMonth.create({ data: { ...own, id: r.monthId, runId: r.runId, ...month } })
  const group = { by: 'area', key: 'Larkmoor', beds: 1, failedAlready: 0, firstMonth: month.month, months: [], years: [] }
  await tx.forecastGroup.create({ data: { ...own, id: r.groupId, runId: r.runId, ...group } })
  const notice = {
    channel: 'email',
    notice: 'due-window',
    state: 'waiting',
    createdAt: at,
    dueEarliest: days.due10Day,
    dueLatest: days.due90Day,
  }
  await tx.reminder.create({ data: { ...own, id: r.reminderId, bedId: r.bedId, siteId: r.siteId, contactId: r.contactId, ...notice } })
  const answer = { kind: 'days', days: 'Any Tuesday', createdAt: at }
  await tx.reminderAnswer.create({ data: { ...own, id: r.answerId, reminderId: r.reminderId, ...answer } })
  const text = { channel: 'email', address: 'hanna@orchard.example', subject: 'Your softener', body: 'It is getting old.' }
  await tx.message.create({ data: { ...own, id: r.messageId, contactId: r.contactId, ...text, state: 'approved', createdAt: at } })
  const ownText = { channel: 'letter', language: 'en', subject: 'Your softener', body: 'It is getting old.', changedAt: at }
  const merging = { kind: 'town', town: 'Larkmoor', moved: [{ from: 'LARKMOOR', ids: [r.otherCustomerId] }], at, personId }
  await tx.merging.create({ data: { ...own, id: r.mergingId, ...merging } })
  await tx.ownText.create({ data: { ...own, id: r.ownTextId, ...ownText } })
  const seen = { confidence: 'sure', reason: 'The header says so.', ask: null, examples: [] }
  const columns = [
    { column: 0, field: 'customerName', header: 'Name', ...seen },
    { column: 1, field: 'street', header: 'Street', ...seen },
  ]
  const file = { fileName: 'customers.csv', headerLine: 1, header: ['Name', 'Street'], totalRows: 1, createdAt: at, createdBy: personId }
  const mapping = { columns, sentences: [], checked: true }
  await tx.importBatch.create({ data: { ...own, id: r.batchId, ...file, mapping, state: 'applied' } })
  await tx.importBatch.create({ data: { ...own, id: r.draftBatchId, ...file, mapping, state: 'draft' } })
  const cells = ['Hanna Vale', 'Orchard Lane 14']
  await tx.importRow.create({ data: { ...own, id: r.rowId, batchId: r.batchId, line: 2, cells, status: 'unchanged' } })
  await tx.importRow.create({ data: { ...own, id: r.draftRowId, batchId: r.draftBatchId, line: 2, cells, status: 'pending' } })
  await tx.importFilePiece.create({ data: { ...own, id: r.pieceId, batchId: r.draftBatchId, place: 0, bytes: new Uint8Array([1]) } })
  await tx.appliedCommand.create({ data: { ...own, id: r.appliedId, personId, operation: 'o', bodyHash: 'h', answer: {}, at } })
  const numbered = { commandId: r.appliedId, queueId: r.appliedId, sequence: 1, clockAheadMinutes: 0, madeAt: at, receivedAt: at }
  const aside = {
    kind: 'refused',
    command: 'start',
    content: {},
    reason: 'The office called this visit off.',
    visitId: r.visitId,
    personId,
  }
  await tx.setAside.create({ data: { ...own, id: r.asideId, ...numbered, ...aside } })
  await tx.companyExport.create({ data: { ...own, id: r.exportId, state: 'ready', tablesTotal: 1, createdAt: at, createdBy: personId } })
  await tx.auditEntry.create({ data: { ...own, id: r.auditId, at, operation: 'o', entity: 'site', entityId: r.siteId, detail: {} } })
}

/** Writes a row into each tenant table of a company, related as in life, at the app's login. */
export async function writeRecords(scope: { companyId: string; personId: string }): Promise<Records> {
  const ids = Object.fromEntries(NAMES.map((name) => [name, newId()])) as Records
  const own = { companyId: scope.companyId }
  await inCompany(scope, async (tx) => {
    await writePlaces(tx, own, ids)
    await writeEquipment(tx, own, ids)
    await writeWork(tx, own, ids)
    await writeAbsence(tx, own, ids)
    await writeOffer(tx, own, ids, scope.personId)
    await writeCalls(tx, own, ids, scope.personId)
    await writeAgreement(tx, own, ids)
    await writeGuide(tx, own, ids, scope.personId)
    await writeLateVisit(tx, own, ids)
    await writePictures(tx, own, ids, scope.personId)
    await writeRest(tx, own, ids, scope.personId)
  })
  return ids
}
