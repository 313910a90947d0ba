import type { PresentSite } from '@almanac/database/read/import-present'
import type { PresentSupply } from '@almanac/database/read/import-supplies'
import { newId } from '@almanac/runtime/ids'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import type { SupplyChoices } from '@almanac/service-rules/import/supply-choices'
import { columnsOf } from './facts.ts'
import type { FileWants } from './gather-wanted.ts'
import type { Ledger } from './ledger.ts'
import type { SupplyPlan } from './plan-types.ts'

export type SupplyInput = {
  companyId: string
  wants: FileWants
  choices: SupplyChoices
  sites: readonly PresentSite[]
  ledger: Ledger
}

const LONGEST_NAME = 120
const text = (value: unknown) => (typeof value === 'string' && value !== '' ? value : null)

/** Finds or plans the well of one home: the one it has, or an import gave it; else one named after the place. */
export function wellFinder(
  { wants, sites, ledger }: Pick<SupplyInput, 'wants' | 'sites' | 'ledger'>,
  present: ReadonlyMap<string, PresentSupply>,
  byName: ReadonlyMap<string, PresentSupply>,
  plan: SupplyPlan,
): { of: (siteKey: string, line: number) => string } {
  const siteOf = new Map(sites.filter((one) => !one.archived).map((one) => [one.matchKey, one]))
  const taken = new Set<string>()

  /** A well that this home alone is on, or that it was on before somebody moved it. */
  const known = (siteKey: string): string | null => {
    const site = siteOf.get(siteKey)
    if (!site) return null
    const own = text(site.row.waterSupplyId)
    const given = text(ledger.wrote.get(site.id)?.supply?.waterSupplyId)
    for (const [id, sitesOnIt] of [[own, 1] as const, [given, given === own ? 1 : 0] as const]) {
      const supply = id === null ? undefined : present.get(id)
      if (supply?.kind === 'private-well' && supply.sites <= sitesOnIt && (id === own || !supply.isArchived)) return supply.id
    }
    return null
  }

  const named = (siteKey: string, line: number): string => {
    const { street, town } = columnsOf(wants.things.get(siteKey)?.facts ?? {})
    // Not after the customer, who may be erased one day.
    const place = `Well at ${text(street) ?? 'a home'}`.slice(0, LONGEST_NAME - 40)
    const inTown = text(town) ? `${place}, ${text(town)}`.slice(0, LONGEST_NAME - 8) : place
    for (let more = 0; ; more++) {
      const name = more === 0 ? place : more === 1 ? inTown : `${inTown} (${more})`
      const key = normaliseText(name)
      if (taken.has(key)) continue
      const stands = byName.get(key)
      // What an undo took away comes again; a well that another home is on does not.
      if (stands && (stands.sites > 0 || stands.kind !== 'private-well' || taken.has(stands.id))) continue
      taken.add(key)
      if (!stands) {
        const id = newId()
        plan.create.push({ id, name, kind: 'private-well', line })
        return id
      }
      taken.add(stands.id)
      if (stands.isArchived) plan.revive.push(stands.id)
      return stands.id
    }
  }
  return {
    of(siteKey, line) {
      const found = known(siteKey)
      if (found) taken.add(found)
      return found ?? named(siteKey, line)
    },
  }
}
