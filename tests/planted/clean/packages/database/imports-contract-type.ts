import type { Contract } from '@almanac/contract/contract'

export type One = Contract
