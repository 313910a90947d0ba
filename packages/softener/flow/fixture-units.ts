import { FROM_MEMORY } from '@almanac/units/sourced'

export type FixtureId =
  | 'bathroom-group'
  | 'bathtub'
  | 'shower'
  | 'lavatory'
  | 'kitchen-sink'
  | 'dishwasher'
  | 'clothes-washer'
  | 'laundry-tray'

export type Fixture = { readonly id: FixtureId; readonly wsfu: number; readonly source: string }

const IPC = 'IPC 2018 Table E103.3(2), private, total'

/** Water supply fixture units of what draws water in a house, hot and cold together. A bathroom group is tank WC, basin, and bath or shower. */
export const FIXTURES: readonly Fixture[] = [
  { id: 'bathroom-group', wsfu: 3.6, source: IPC },
  { id: 'bathtub', wsfu: 1.4, source: IPC },
  { id: 'shower', wsfu: 1.4, source: FROM_MEMORY },
  { id: 'lavatory', wsfu: 0.7, source: IPC },
  { id: 'kitchen-sink', wsfu: 1.4, source: IPC },
  { id: 'dishwasher', wsfu: 1.4, source: IPC },
  { id: 'clothes-washer', wsfu: 1.4, source: FROM_MEMORY },
  { id: 'laundry-tray', wsfu: 1.4, source: IPC },
]

export type FixtureCounts = Partial<Record<FixtureId, number>>

/** Most of one fixture that is believed; more is a slip of entry. */
export const MOST_FIXTURES = 200

/** Sum of fixture units; counts that are no whole number from 0 to 200 count as none. */
export function fixtureUnits(counts: FixtureCounts): number {
  let sum = 0
  for (const { id, wsfu } of FIXTURES) {
    const count = counts[id] ?? 0
    if (count > 0 && count <= MOST_FIXTURES) sum += Math.floor(count) * wsfu
  }
  return sum
}

/** What a house is taken to have where nobody counted: a bathroom for every two people (common practice, no source), kitchen and laundry. */
export function usualFixtures(people: number | null): FixtureCounts {
  const bathrooms = Math.min(20, Math.max(1, Math.ceil((people ?? 4) / 2)))
  return { 'bathroom-group': bathrooms, 'kitchen-sink': 1, dishwasher: 1, 'clothes-washer': 1 }
}
