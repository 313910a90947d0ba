import { arrival } from './arrival.ts'
import { diagnosis } from './diagnosis.ts'
import { diagnosisCautions } from './diagnosis-cautions.ts'
import { emergency } from './emergency.ts'
import { field } from './field.ts'
import { join } from './join.ts'
import { letter } from './letter.ts'
import { ownerRebed } from './owner-rebed.ts'
import { plan } from './plan.ts'
import { refusal } from './refusal.ts'
import { reminderLink } from './reminder-link.ts'
import { report } from './report.ts'
import { saving } from './saving.ts'
import { sending } from './sending.ts'
import { signIn } from './sign-in.ts'
import { tabletFact } from './tablet-fact.ts'
import { whatsWrong } from './whats-wrong.ts'
import { whichTank } from './which-tank.ts'

/** Every message in English: the shape that the other languages follow. */
export const en = {
  ...field,
  arrival,
  diagnosis,
  diagnosisCautions,
  emergency,
  join,
  letter,
  ownerRebed,
  plan,
  refusal,
  reminderLink,
  report,
  saving,
  sending,
  signIn,
  tabletFact,
  whatsWrong,
  whichTank,
}
