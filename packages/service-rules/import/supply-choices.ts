import { isOwnWell } from './well-names.ts'

/** What a list means by the name of a supply: one on record, one of that name, or the well of each home that has it. */
export type SupplyChoice = { to: 'supply'; waterSupplyId: string } | { to: 'named' } | { to: 'own-wells' }

/** Choices by the name of the supply, folded. */
export type SupplyChoices = ReadonlyMap<string, SupplyChoice>

/** What a name means while nobody has said so: "well" is each home's own, all else the supply of that name. */
export const usualSupply = (name: string): SupplyChoice => (isOwnWell(name) ? { to: 'own-wells' } : { to: 'named' })
