import { arrival } from './arrival.ts'
import { bed } from './bed.ts'
import { crewWork } from './crew-work.ts'
import { diagnosis } from './diagnosis.ts'
import { diagnosisCautions } from './diagnosis-cautions.ts'
import { emergency } from './emergency.ts'
import { factSource } from './fact-source.ts'
import { field } from './field.ts'
import { firstRecords } from './first-records.ts'
import { forecast } from './forecast.ts'
import { frame } from './frame.ts'
import { history } from './history.ts'
import { job } from './job.ts'
import { join } from './join.ts'
import { letter } from './letter.ts'
import { materials } from './materials.ts'
import { nothingHere } from './nothing-here.ts'
import { ownAccount } from './own-account.ts'
import { ownerMeasure } from './owner-measure.ts'
import { ownerRebed } from './owner-rebed.ts'
import { ownerSteps } from './owner-steps.ts'
import { pageTitle } from './page-title.ts'
import { plan } from './plan.ts'
import { plot } from './plot.ts'
import { proof } from './proof.ts'
import { refusal } from './refusal.ts'
import { reminderLink } from './reminder-link.ts'
import { report } from './report.ts'
import { saving } from './saving.ts'
import { sending } from './sending.ts'
import { signIn } from './sign-in.ts'
import { site } from './site.ts'
import { sites } from './sites.ts'
import { stores } from './stores.ts'
import { tabletFact } from './tablet-fact.ts'
import { water } from './water.ts'
import { wayInMail } from './way-in-mail.ts'
import { whatsWrong } from './whats-wrong.ts'
import { whichTank } from './which-tank.ts'
import { whom } from './whom.ts'

/** Every message in English: the shape that the other languages follow. */
export const en = {
  ...field,
  arrival,
  bed,
  crewWork,
  diagnosis,
  diagnosisCautions,
  emergency,
  factSource,
  firstRecords,
  forecast,
  frame,
  history,
  job,
  join,
  letter,
  materials,
  nothingHere,
  ownAccount,
  ownerMeasure,
  ownerRebed,
  ownerSteps,
  pageTitle,
  plan,
  plot,
  proof,
  refusal,
  reminderLink,
  report,
  saving,
  sending,
  signIn,
  site,
  sites,
  stores,
  tabletFact,
  water,
  wayInMail,
  whatsWrong,
  whichTank,
  whom,
}
