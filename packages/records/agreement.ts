import type { JobKind } from './job-kind.ts'

/** What comes again by a rule: a visit every year, salt brought, a softener that is rented out and looked after. */
export const agreementKinds = ['visits', 'salt', 'rental'] as const
export type AgreementKind = (typeof agreementKinds)[number]

export const agreementKindWords: Readonly<Record<AgreementKind, string>> = {
  visits: 'Regular visits',
  salt: 'Salt deliveries',
  rental: 'Rental',
}

/** The job that a turn of each kind is. A rented softener is looked after as in an annual visit. */
export const jobOfAgreement: Readonly<Record<AgreementKind, JobKind>> = { visits: 'annual-visit', salt: 'delivery', rental: 'annual-visit' }

/** What its price is for. */
export const pricePers = ['turn', 'month', 'year'] as const
export type PricePer = (typeof pricePers)[number]
export const pricePerWords: Readonly<Record<PricePer, string>> = { turn: 'each time', month: 'a month', year: 'a year' }

/** Why an agreement ended before its time: the customer or the company asked, the house was sold, the person was erased, it was entered by mistake. */
export const agreementEnds = ['asked', 'sold', 'erased', 'mistake'] as const
export type AgreementEnd = (typeof agreementEnds)[number]
export const agreementEndWords: Readonly<Record<AgreementEnd, string>> = {
  asked: 'Ended on request',
  sold: 'Ended when the site changed hands',
  erased: 'Ended: its customer was erased',
  mistake: 'Entered by mistake',
}

/** What is kept of one turn. One that nobody proposed, did or skipped is kept nowhere: its rule says when it is due. */
export const turnStates = ['proposed', 'done', 'skipped'] as const
export type TurnState = (typeof turnStates)[number]

/** How often, as people say it; each becomes a rule of RFC 5545. */
export const turnUnits = ['week', 'month', 'year'] as const
export type TurnUnit = (typeof turnUnits)[number]
