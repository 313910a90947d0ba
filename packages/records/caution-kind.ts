/** What a step can hurt with; `refer` hands the matter to another trade. */
export const cautionKinds = ['pressure', 'electricity', 'lifting', 'chemical', 'water', 'slip', 'refer'] as const
export type CautionKind = (typeof cautionKinds)[number]
