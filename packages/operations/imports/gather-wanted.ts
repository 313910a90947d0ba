import type { Disinfectant } from '@almanac/records/disinfectant'
import { factWords } from '@almanac/records/import-facts'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import type { DesiredEntity, RowWants } from './entities-from-record.ts'
import { sameFact } from './facts.ts'

const KIND_WORDS = {
  customer: 'customer',
  contact: 'customer',
  site: 'site',
  softener: 'softener',
  tank: 'softener',
  bed: 'softener',
  test: 'softener',
}

/** A supply as a list names it: its name without regard to case and accents, and what its rows tell of it. */
export type WantedSupply = { key: string; name: string; line: number; rows: number; disinfectants: Map<Disinfectant, number> }

/** Everything a whole file wants, each thing once however many rows speak of it. */
export type FileWants = {
  things: Map<string, DesiredEntity>
  supplies: Map<string, WantedSupply>
  /** Key of the supply of each site that names one, with its line and what that tells of the water. */
  supplyOfSite: Map<string, { supply: string; line: number; disinfectant: Disinfectant | null }>
  /** Keys of each understood row's customer, site and softener. */
  rowKeys: Map<number, { customer: string; site: string; softener: string }>
  notes: Map<number, string[]>
}

export function emptyWants(): FileWants {
  return { things: new Map(), supplies: new Map(), supplyOfSite: new Map(), rowKeys: new Map(), notes: new Map() }
}

function gatherSupply(wants: FileWants, name: string, disinfectant: Disinfectant | null, siteKey: string, line: number): void {
  const key = normaliseText(name)
  const supply = wants.supplies.get(key) ?? { key, name: name.slice(0, 120), line, rows: 0, disinfectants: new Map() }
  supply.rows++
  if (disinfectant) supply.disinfectants.set(disinfectant, (supply.disinfectants.get(disinfectant) ?? 0) + 1)
  wants.supplies.set(key, supply)
  wants.supplyOfSite.set(siteKey, { supply: key, line, disinfectant })
}

/** Adds a row. Where two rows differ about the same thing the later one counts, and says so. */
export function gatherRow(wants: FileWants, row: RowWants, line: number): void {
  const notes = [...row.notes]
  for (const thing of row.things) {
    const known = wants.things.get(thing.key)
    if (!known) {
      wants.things.set(thing.key, thing)
      continue
    }
    for (const [fact, value] of Object.entries(thing.facts)) {
      const before = known.facts[fact]
      if (before && !sameFact(before, value) && thing.position === 1)
        notes.push(
          `Line ${known.lines[fact]} gives another ${factWords[fact] ?? fact} for the same ${KIND_WORDS[thing.kind]}; this line counts.`,
        )
      known.facts[fact] = value
      known.lines[fact] = line
    }
    Object.assign(known.entered, thing.entered)
    if (thing.earlier.length > 0) known.earlier = thing.earlier
    if (thing.facts.began) known.isRebed = thing.isRebed
  }
  const parents = row.things[0]?.parents
  if (parents) wants.rowKeys.set(line, parents)
  if (row.supplyName && parents) gatherSupply(wants, row.supplyName, row.disinfectant, parents.site, line)
  if (notes.length > 0) wants.notes.set(line, notes)
}
