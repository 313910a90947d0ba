import type { PresentTank, PresentThing } from '@almanac/database/read/import-present'
import { sourceOn } from '@almanac/records/fact-source'
import { factWords, type ImportKind } from '@almanac/records/import-facts'
import { newId } from '@almanac/runtime/ids'
import { decideFacts } from './decide-facts.ts'
import type { DesiredEntity } from './entities-from-record.ts'
import { columnsOf, factsOf, type ImportedFacts } from './facts.ts'
import type { FileWants } from './gather-wanted.ts'
import { type ExistingRecords, type ImportPlanContext, type Outcomes, withoutOlderDay } from './import-plan-context.ts'
import type { Ledger } from './ledger.ts'
import type { ImportPlan } from './plan-types.ts'
import { settleBed } from './settle-bed.ts'

const push = <T>(map: Map<number, T[]>, line: number, value: T) => void map.set(line, [...(map.get(line) ?? []), value])
const SOURCED: ReadonlySet<ImportKind> = new Set(['tank', 'bed'])

function begin(plan: ImportPlan, ledger: Ledger, fileName: string): ImportPlanContext {
  const outcomes: Outcomes = { created: new Set(), updated: new Set(), notes: new Map(), ledger: new Map(), idOf: new Map() }
  const from = (thing: DesiredEntity, fact: string) =>
    fact === 'lastSeenDay' && thing.byList
      ? sourceOn(`import ${fileName}, last right`, thing.byList)
      : `import ${fileName} line ${thing.lines[fact] ?? thing.line}`
  const idOf = (key: string) => outcomes.idOf.get(key) ?? ''
  const settling: ImportPlanContext = {
    plan,
    outcomes,
    ledger,
    fileName,
    tankCount: new Map(),
    note: (line, sentence) => push(outcomes.notes, line, sentence),
    enter: (line, entry) => push(outcomes.ledger, line, entry),
    make(thing, facts = thing.facts, key = thing.key) {
      const id = newId()
      const { customer, site, softener } = thing.parents
      const tank = idOf(`${softener}|tank:${thing.position}`)
      plan.creates[thing.kind].push({
        ...{ kind: thing.kind, id, key, line: thing.line, position: thing.position, facts },
        parents: { customer: idOf(customer), site: idOf(site), softener: idOf(softener), tank },
        tankCount: settling.tankCount.get(softener) ?? 1,
        sources: Object.fromEntries(Object.keys(facts).map((fact) => [fact, from(thing, fact)])),
        entered: thing.entered,
      })
      outcomes.created.add(thing.line)
      settling.enter(thing.line, { kind: thing.kind, id, key, was: null, wrote: facts })
      return id
    },
    change(thing, present, oldSources = {}) {
      const stands = factsOf(thing.kind, present.row)
      const decision = decideFacts(stands, ledger.wrote.get(present.id) ?? {}, thing.facts)
      if (thing.kind === 'bed') keepDaysInOrder(stands, decision)
      for (const fact of decision.kept)
        settling.note(thing.lines[fact] ?? thing.line, `Kept your edit of the ${factWords[fact] ?? fact}; the file says otherwise.`)
      const changed = Object.keys(decision.changed)
      if (changed.length > 0) {
        const wrote = { ...decision.changed, ...decision.confirmed }
        const was = Object.fromEntries(changed.map((fact) => [fact, stands[fact] ?? {}]))
        const sources = Object.fromEntries(changed.map((fact) => [fact, oldSources[fact] ?? null]))
        settling.enter(thing.line, { kind: thing.kind, id: present.id, key: thing.key, was, wrote, sources })
        plan.patches[thing.kind].push({
          ...{ id: present.id, version: present.version, columns: { ...columnsOf(stands), ...columnsOf(decision.changed) } },
          sources: SOURCED.has(thing.kind) ? Object.fromEntries(changed.map((fact) => [fact, from(thing, fact)])) : {},
          entered: thing.entered,
        })
        for (const fact of changed) outcomes.updated.add(thing.lines[fact] ?? thing.line)
      } else if (Object.keys(decision.confirmed).length > 0)
        settling.enter(thing.line, { kind: thing.kind, id: present.id, key: thing.key, was: {}, wrote: decision.confirmed })
    },
  }
  return settling
}

/** A bed is not seen before it began: where file and edits together would say so, neither day moves. */
function keepDaysInOrder(stands: ImportedFacts, decision: ReturnType<typeof decideFacts>): void {
  const after = columnsOf({ ...stands, ...decision.changed })
  const [began, seen] = [after.beganEarliest, after.lastSeenDay]
  if (typeof began !== 'string' || typeof seen !== 'string' || seen >= began) return
  for (const fact of ['began', 'lastSeenDay'] as const) {
    if (!decision.changed[fact]) continue
    delete decision.changed[fact]
    decision.kept.push(fact)
  }
}

/** The live thing of each key; of removed ones, those removed by hand: they stay away, while what an undo took may come again. */
function byKey<T extends { matchKey: string; archived: boolean; batchId: string | null }>(
  things: readonly T[],
  undone: ReadonlySet<string>,
) {
  const live = new Map<string, T>()
  const removed = new Set<string>()
  for (const thing of things) {
    if (!thing.archived) live.set(thing.matchKey, thing)
    else if (!thing.batchId || !undone.has(thing.batchId)) removed.add(thing.matchKey)
  }
  for (const key of live.keys()) removed.delete(key)
  return { live, removed }
}

/** Decides for each thing of the file whether it is made, changed or left, parents before what hangs on them. */
export function settleThings(plan: ImportPlan, wants: FileWants, standing: ExistingRecords, fileName: string): Outcomes {
  const settling = begin(plan, standing.ledger, fileName)
  const { outcomes, tankCount } = settling
  const customers = byKey(standing.customers, standing.undone)
  const sites = byKey(standing.sites, standing.undone)
  const softeners = byKey(standing.softeners, standing.undone)
  const removed = new Set([...customers.removed, ...sites.removed, ...softeners.removed])
  for (const thing of wants.things.values())
    if (thing.kind === 'tank') tankCount.set(thing.parents.softener, (tankCount.get(thing.parents.softener) ?? 0) + 1)
  const settle = (thing: DesiredEntity, present: PresentThing | null | undefined, sources?: Record<string, string>) => {
    if (present && !present.isMerged) settling.change(thing, present, sources)
    const id = present?.id ?? settling.make(thing)
    outcomes.idOf.set(thing.key, id)
    return id
  }
  const tankOf = (thing: DesiredEntity): PresentTank | undefined =>
    softeners.live.get(thing.parents.softener)?.tanks.find((tank) => tank.position === thing.position)
  for (const thing of wants.things.values()) {
    const { customer, site, softener } = thing.parents
    const above =
      thing.kind === 'customer' || thing.kind === 'contact'
        ? [customer]
        : thing.kind === 'site'
          ? [customer, site]
          : [customer, site, softener]
    if (above.some((key) => removed.has(key))) {
      if (thing.kind === 'softener') settling.note(thing.line, 'Left out: somebody removed this by hand after the import.')
      continue
    }
    if (thing.kind === 'customer') settle(thing, customers.live.get(thing.key))
    else if (thing.kind === 'contact') {
      const of = customers.live.get(customer)
      if (!of?.isMerged) settle(thing, of?.contact)
    } else if (thing.kind === 'site') settle(thing, sites.live.get(thing.key))
    else if (thing.kind === 'softener') settle(thing, softeners.live.get(thing.key))
    else if (thing.kind === 'tank') settle(thing, tankOf(thing), tankOf(thing)?.sources)
    else if (thing.kind === 'test') {
      const stands = softeners.live.get(softener)?.test
      settle(stands ? withoutOlderDay(thing, stands, 'day') : thing, stands)
    } else settleBed(settling, thing, tankOf(thing))
  }
  touched(plan, standing, wants, outcomes)
  return outcomes
}

/** Which sites' words and which stored beds' forecasts the plan may change. */
function touched(plan: ImportPlan, standing: ExistingRecords, wants: FileWants, outcomes: Outcomes): void {
  const changed = new Set([...Object.values(plan.creates).flat(), ...Object.values(plan.patches).flat()].map((one) => one.id))
  const bedsOf = new Map(standing.softeners.map((one) => [one.matchKey, one.tanks.flatMap((tank) => tank.openBed?.id ?? [])]))
  for (const thing of wants.things.values()) {
    const id = outcomes.idOf.get(thing.key)
    if (!id || !changed.has(id)) continue
    const siteId = outcomes.idOf.get(thing.parents.site)
    if (siteId) plan.siteIds.add(siteId)
    if (thing.kind !== 'customer' && thing.kind !== 'contact')
      for (const bedId of bedsOf.get(thing.parents.softener) ?? []) plan.bedIds.add(bedId)
  }
}
