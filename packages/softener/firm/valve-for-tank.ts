import { hasCommercialTube } from '../tanks/distributor-tube.ts'
import type { ValveCard } from './firm-figures.ts'

type Valve = { cardId: string | null; control: 'meter' | 'timer' | null; diameterIn: number | null }

/**
 * The card that a valve goes by: its own, else the usual one. A tank that takes the larger tube has a larger valve: the drain controls of a house end at 7 gpm,
 * where a 21 in tank wants 11 to 15, and its refill would take a quarter of an hour. Null where the firm has no such card.
 */
export function valveForTank(valves: readonly ValveCard[], { cardId, control, diameterIn }: Valve): ValveCard | null {
  const byId = (id: string | null) => valves.find((one) => one.id === id) ?? null
  const usual = diameterIn !== null && hasCommercialTube(diameterIn) ? 'usual-commercial' : `usual-${control ?? 'meter'}`
  return byId(cardId) ?? byId(usual) ?? byId(`usual-${control ?? 'meter'}`)
}
