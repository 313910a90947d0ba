import { unitSystems } from '@almanac/units/unit-system'
import { agreementEnds, agreementKinds, pricePers, turnStates } from './agreement.ts'
import { archiveReasons } from './archive-reason.ts'
import { arrangements } from './arrangement.ts'
import { beadConditions } from './bead-condition.ts'
import { callBackCauses, callBackOutcomes, callBackStates, callComplaints, callFollowUps, promiseWays } from './call.ts'
import { channels } from './channel.ts'
import { consentSources } from './consent-source.ts'
import { contactRoles } from './contact-role.ts'
import { dayFills, planKinds, planStates } from './day-plan.ts'
import { recordedDisinfectants } from './disinfectant.ts'
import { endCauses } from './end-cause.ts'
import { exportStates } from './export-state.ts'
import { questionKeys } from './forecast-question.ts'
import { dueGroupings, runScopes } from './forecast-run.ts'
import { guideMeasures } from './guide-measure.ts'
import { guideEnds, guideStates } from './guide-state.ts'
import { identityEventKinds } from './identity-event.ts'
import { importRowStatuses, importStates } from './import-state.ts'
import { jobKinds } from './job-kind.ts'
import { jobStates } from './job-state.ts'
import { languages } from './language.ts'
import { measuringPoints } from './measuring-point.ts'
import { mergeables } from './merging.ts'
import { mailedFileStates, messageStates, reminderStates } from './message-state.ts'
import { linkPurposes } from './one-time-link.ts'
import { ownerVerdicts } from './owner-verdict.ts'
import { papers } from './paper.ts'
import { pictureKinds, pictureStates } from './picture-kind.ts'
import { preTreatmentKinds } from './pre-treatment-kind.ts'
import { doneBys, reminderAnswers } from './reminder-answer.ts'
import { recordedResinKinds, resinKinds } from './resin-kind.ts'
import { roles } from './role.ts'
import { setAsideKinds } from './set-aside-kind.ts'
import { signings } from './signing.ts'
import { materialStates, materialWays, movementReasons, reservationStates, stockKinds } from './stock.ts'
import { supplyKinds } from './supply-kind.ts'
import { recordedValveControls } from './valve-control.ts'
import { visitOutcomes } from './visit-outcome.ts'
import { visitStates } from './visit-state.ts'
import { offerStates } from './window-offer.ts'

/** The database's columns that hold a word of an enumeration, by 'table.column'. A test holds each against the database's own check, both ways. */
export const columnValues: Readonly<Record<string, readonly string[]>> = {
  'agreement.end_why': agreementEnds,
  'agreement.kind': agreementKinds,
  'agreement_term.price_per': pricePers,
  'agreement_turn.state': turnStates,
  'bed.end_cause': endCauses,
  'bed.resin_kind': recordedResinKinds,
  'bed_forecast.question_key': questionKeys,
  'call_back.cause': callBackCauses,
  'call_back.outcome': callBackOutcomes,
  'call_back.state': callBackStates,
  'company_export.state': exportStates,
  'company_settings.day_fill': dayFills,
  'company.paper': papers,
  'company.unit_system': unitSystems,
  'consent.channel': channels,
  'consent.source': consentSources,
  'contact.language': languages,
  'contact.role': contactRoles,
  'forecast_group.by': dueGroupings,
  'forecast_run.scope': runScopes,
  'guide_entry.measure': guideMeasures,
  'identity_event.kind': identityEventKinds,
  'customer.archive_reason': archiveReasons,
  'site.archive_reason': archiveReasons,
  'softener.archive_reason': archiveReasons,
  'import_batch.state': importStates,
  'import_row.status': importRowStatuses,
  'inspection.bead_condition': beadConditions,
  'job.kind': jobKinds,
  'job.state': jobStates,
  'kit_reservation.state': reservationStates,
  'material_line.state': materialStates,
  'material_line.way': materialWays,
  'membership.role': roles,
  'merging.kind': mergeables,
  'message.channel': channels,
  'message.state': messageStates,
  'movement.reason': movementReasons,
  'one_time_link.purpose': linkPurposes,
  'one_time_link.role': roles,
  'person.language': languages,
  'phone_call.follows': callFollowUps,
  'phone_call.sees': callComplaints,
  'picture.kind': pictureKinds,
  'picture.state': pictureStates,
  'message.file_state': mailedFileStates,
  'own_text.channel': channels,
  'own_text.language': languages,
  'owner_decision.verdict': ownerVerdicts,
  'owner_guide.ended': guideEnds,
  'owner_guide.state': guideStates,
  'plan_proposal.kind': planKinds,
  'plan_proposal.state': planStates,
  'pre_treatment.kind': preTreatmentKinds,
  'reminder.channel': channels,
  'reminder_answer.done_by': doneBys,
  'reminder_answer.kind': reminderAnswers,
  'reminder.state': reminderStates,
  'set_aside.kind': setAsideKinds,
  'signature.answer': signings,
  'softener.arrangement': arrangements,
  'stock_item.kind': stockKinds,
  'stock_item.resin_kind': resinKinds,
  'supply_period.disinfectant': recordedDisinfectants,
  'valve.control': recordedValveControls,
  'visit.outcome': visitOutcomes,
  'visit.promised_by': promiseWays,
  'visit.state': visitStates,
  'water_supply.kind': supplyKinds,
  'water_test.point': measuringPoints,
  'window_offer.state': offerStates,
}
