/** Whose water it is. */
export const supplyKinds = ['town', 'private-well'] as const
export type SupplyKind = (typeof supplyKinds)[number]

/** What the beds on private wells share a life effect under: each well is one home's, and alone would tell of one bed. */
export const PRIVATE_WELLS = 'private-wells'

/** The beds that share a life effect beyond what their water explains: those of a town's supply among themselves, those on private wells all together. */
export const supplyGroup = (waterSupplyId: string | null, kind: SupplyKind | null): string | null =>
  kind === 'private-well' ? PRIVATE_WELLS : waterSupplyId
