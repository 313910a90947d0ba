import type { PresentTank, PresentThing } from '@almanac/database/read/import-present'
import type { EndCause } from '@almanac/records/end-cause'
import type { DesiredEntity } from './entities-from-record.ts'
import { columnsOf, factsOf, type ImportedFact, type ImportedFacts, sameFact } from './facts.ts'
import { type ImportPlanContext, withoutOlderDay } from './import-plan-context.ts'

/** The end of a filling that the beginning of the next one tells, with the cause if somebody wrote it down. */
function endedBy(began: ImportedFact, lastSeenDay: string | null, endCause: EndCause): ImportedFact {
  const earliest = String(began.beganEarliest)
  return {
    endedEarliest: lastSeenDay && lastSeenDay > earliest ? lastSeenDay : earliest,
    endedLatest: began.beganLatest ?? null,
    endCause,
  }
}

/** A new filling with the fillings before it that the row tells of. */
function makeBeds(settling: ImportPlanContext, thing: DesiredEntity): void {
  for (const [at, { began, ended, cause }] of thing.earlier.entries()) {
    const facts: ImportedFacts = {
      ...(began && { began: { beganEarliest: began.earliestDay, beganLatest: began.latestDay, beganAsWritten: began.asWritten } }),
      ended: { endedEarliest: ended.earliestDay, endedLatest: ended.latestDay, endCause: cause },
    }
    const before = thing.earlier.length - at
    settling.make({ ...thing, entered: {} }, facts, `${thing.key}|earlier${before === 1 ? '' : `:${before}`}`)
  }
  settling.outcomes.idOf.set(thing.key, settling.make(thing))
}

/** True where the file now tells of a later rebed than the one it told of: another filling, no correction of the old one's beginning. */
function isNewFilling(thing: DesiredEntity, stands: ImportedFacts, wrote: ImportedFacts): boolean {
  const [before, after] = [columnsOf(stands), thing.facts.began]
  if (!thing.isRebed || !after || !sameFact(stands.began, wrote.began)) return false
  const latest = before.beganLatest
  const seen = before.lastSeenDay
  const isLater = typeof latest === 'string' && String(after.beganEarliest) > latest
  return isLater && (typeof seen !== 'string' || seen <= String(after.beganLatest))
}

function replaceBed(settling: ImportPlanContext, thing: DesiredEntity, present: PresentThing, tank: PresentTank): void {
  const stands = factsOf('bed', present.row)
  const seen = columnsOf(stands).lastSeenDay
  const ended = endedBy(thing.facts.began ?? {}, typeof seen === 'string' ? seen : null, thing.earlier.at(-1)?.cause ?? 'unknown')
  settling.enter(thing.line, {
    ...{ kind: 'bed', id: present.id, key: `${thing.key}|ended` },
    ...{ was: { ended: stands.ended ?? {} }, wrote: { ended }, sources: { ended: null } },
  })
  const columns = { ...columnsOf(stands), ...ended }
  settling.plan.patches.bed.push({
    ...{ id: present.id, version: present.version, columns, entered: {} },
    sources: { ended: `import ${settling.fileName} line ${thing.line}` },
  })
  settling.plan.bedIds.add(present.id)
  settling.outcomes.idOf.set(`${thing.parents.softener}|tank:${thing.position}`, tank.id)
  settling.outcomes.idOf.set(thing.key, settling.make({ ...thing, earlier: [] }))
  settling.note(thing.line, 'The file shows a later rebed, so the earlier bed was ended and a new one started.')
}

/** Settles the filling of one tank: made, replaced by a later rebed, changed field by field, or left where a visit replaced it since. */
export function settleBed(settling: ImportPlanContext, thing: DesiredEntity, tank: PresentTank | undefined): void {
  if (!tank) {
    makeBeds(settling, thing)
    return
  }
  const open = tank.openBed
  const imported = settling.ledger.idOfKey.get(thing.key)
  if (imported && open?.id !== imported) {
    const wrote = settling.ledger.wrote.get(imported) ?? {}
    const isNews = Object.entries(thing.facts).some(([fact, value]) => !sameFact(wrote[fact], value))
    if (isNews) settling.note(thing.line, 'The bed in this row was replaced after the import, so the file’s data for it was not used.')
    return
  }
  if (!open) {
    makeBeds(settling, thing)
    return
  }
  const wrote = settling.ledger.wrote.get(open.id) ?? {}
  if (isNewFilling(thing, factsOf('bed', open.row), wrote)) replaceBed(settling, thing, open, tank)
  else {
    settling.change(withoutOlderDay(thing, open, 'lastSeenDay'), open, open.sources)
    settling.outcomes.idOf.set(thing.key, open.id)
  }
}
