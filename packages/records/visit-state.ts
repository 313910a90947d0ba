/** The states of a visit. `offered` holds people and vehicle until the customer has chosen a time. */
export const visitStates = ['offered', 'booked', 'under-way', 'closed', 'called-off'] as const
export type VisitState = (typeof visitStates)[number]

export const visitStateWords: Readonly<Record<VisitState, string>> = {
  offered: 'offered',
  booked: 'booked',
  'under-way': 'under way',
  closed: 'closed',
  'called-off': 'called off',
}
