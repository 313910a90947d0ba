/** Whose water it is. */
export const supplyKinds = ['town', 'private-well'] as const
export type SupplyKind = (typeof supplyKinds)[number]
