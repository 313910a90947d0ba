import type { FieldCatalogue } from '../catalogue.ts'
import { account } from './account.ts'
import { amount } from './amount.ts'
import { amountName } from './amount-name.ts'
import { askedFor } from './asked-for.ts'
import { asks } from './asks.ts'
import { beadCondition } from './bead-condition.ts'
import { bedFacts } from './bed-facts.ts'
import { card } from './card.ts'
import { cardWhy } from './card-why.ts'
import { cautions } from './cautions.ts'
import { closeOut } from './close-out.ts'
import { common } from './common.ts'
import { contactRole } from './contact-role.ts'
import { endCause } from './end-cause.ts'
import { failure } from './failure.ts'
import { find } from './find.ts'
import { hazard } from './hazard.ts'
import { jobKind } from './job-kind.ts'
import { jobState } from './job-state.ts'
import { kit } from './kit.ts'
import { lacking } from './lacking.ts'
import { outcome } from './outcome.ts'
import { outcomeMeaning } from './outcome-meaning.ts'
import { page } from './page.ts'
import { photographs } from './photographs.ts'
import { resinKind } from './resin-kind.ts'
import { sendReport } from './send-report.ts'
import { sending } from './sending.ts'
import { steps } from './steps.ts'
import { stop } from './stop.ts'
import { today } from './today.ts'
import { unitWord } from './unit-word.ts'
import { visit } from './visit.ts'

export const field: FieldCatalogue = {
  account,
  amount,
  amountName,
  askedFor,
  asks,
  beadCondition,
  bedFacts,
  card,
  cardWhy,
  cautions,
  closeOut,
  common,
  contactRole,
  endCause,
  failure,
  find,
  hazard,
  jobKind,
  jobState,
  kit,
  lacking,
  outcome,
  outcomeMeaning,
  page,
  photographs,
  resinKind,
  sending,
  sendReport,
  steps,
  stop,
  today,
  unitWord,
  visit,
}
