/** Whose water it is. */
export const supplyKinds = ['town', 'private-well'] as const
export type SupplyKind = (typeof supplyKinds)[number]

export const supplyKindWords: Readonly<Record<SupplyKind, string>> = { town: 'Town supply', 'private-well': 'Private well' }
