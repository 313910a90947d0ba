/** Whether the customer signed for a visit. */
export const signings = ['signed', 'not-there', 'declined'] as const
export type Signing = (typeof signings)[number]

/** The answers without a signature. */
export const unsigned = ['not-there', 'declined'] as const satisfies readonly Signing[]
export type Unsigned = (typeof unsigned)[number]
