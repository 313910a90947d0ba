/** The states of arrival windows offered to a customer. */
export const offerStates = ['open', 'confirmed', 'withdrawn', 'lapsed'] as const
export type OfferState = (typeof offerStates)[number]
