import { contract } from '@almanac/contract/contract'

export const one = contract
