import type { SupplyKind } from '@almanac/records/supply-kind'

type Supply = { id: string; name: string; kind: SupplyKind; sites: number }

/** Water that another home can be on: a well that one home has alone is left out, of which there may be hundreds, but for `ownId`, the one in use here. */
export const sharedSupplies = <T extends Supply>(all: readonly T[], ownId?: string | null): T[] =>
  all.filter((one) => one.kind === 'town' || one.sites !== 1 || one.id === ownId)
