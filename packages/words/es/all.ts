import type { Catalogue } from '../catalogue.ts'
import { arrival } from './arrival.ts'
import { crewWork } from './crew-work.ts'
import { diagnosis } from './diagnosis.ts'
import { diagnosisCautions } from './diagnosis-cautions.ts'
import { emergency } from './emergency.ts'
import { field } from './field.ts'
import { join } from './join.ts'
import { letter } from './letter.ts'
import { nothingHere } from './nothing-here.ts'
import { ownAccount } from './own-account.ts'
import { ownerMeasure } from './owner-measure.ts'
import { ownerRebed } from './owner-rebed.ts'
import { pageTitle } from './page-title.ts'
import { plan } from './plan.ts'
import { refusal } from './refusal.ts'
import { reminderLink } from './reminder-link.ts'
import { report } from './report.ts'
import { saving } from './saving.ts'
import { sending } from './sending.ts'
import { signIn } from './sign-in.ts'
import { tabletFact } from './tablet-fact.ts'
import { wayInMail } from './way-in-mail.ts'
import { whatsWrong } from './whats-wrong.ts'
import { whichTank } from './which-tank.ts'

/** Every message in Spanish. */
export const es: Catalogue = {
  ...field,
  arrival,
  crewWork,
  diagnosis,
  diagnosisCautions,
  emergency,
  join,
  letter,
  nothingHere,
  ownAccount,
  ownerMeasure,
  ownerRebed,
  pageTitle,
  plan,
  refusal,
  reminderLink,
  report,
  saving,
  sending,
  signIn,
  tabletFact,
  wayInMail,
  whatsWrong,
  whichTank,
}
