/** Whether an owner may do a rebed alone: leave it to the crew, ask more first, or go with a helper. */
export const ownerVerdicts = ['firm', 'ask-first', 'owner-with-helper'] as const
export type OwnerVerdict = (typeof ownerVerdicts)[number]
