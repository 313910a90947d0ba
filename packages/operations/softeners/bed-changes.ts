import type { BedFactChanges } from '@almanac/contract/beds'
import { dateOf, dayOf } from '@almanac/database/days'
import { convertLength } from '@almanac/units/length'
import { convertMass } from '@almanac/units/mass'
import { convertVolume } from '@almanac/units/volume'
import { enteredOf } from '../shared/check-amounts.ts'
import type { CompanyFacts } from '../shared/company-facts.ts'
import { checkBedDays, readBegan } from '../shared/read-typed-facts.ts'

type StoredBed = {
  beganEarliest: Date | null
  lastSeenDay: Date | null
  endedLatest: Date | null
  entered: unknown
  factSources: unknown
}

type Change = { company: CompanyFacts; from: string; why: Record<string, string> | undefined }

/** The columns of a bed that some facts change, each with where it came from; values keep what was typed beside the canonical one. */
export function bedChanges(bed: StoredBed, facts: BedFactChanges, { company, from, why }: Change) {
  const sources = { ...(bed.factSources as Record<string, string>) }
  const entered = { ...(bed.entered as ReturnType<typeof enteredOf>) }
  const note = (fact: string, value: unknown) => {
    if (value === null) delete sources[fact]
    else sources[fact] = from
  }
  const keep = (fact: string, typed: { value: number; unit: string } | null) => {
    if (typed === null) delete entered[fact]
    else Object.assign(entered, enteredOf({ [fact]: typed }, why))
  }
  const data: {
    resinKind?: string
    volumeFt3?: number | null
    gravelLb?: number | null
    tubeCutIn?: number | null
    beganEarliest?: Date | null
    beganLatest?: Date | null
    beganAsWritten?: string | null
    lastSeenDay?: Date | null
  } = {}
  if (facts.resinKind !== undefined) {
    data.resinKind = facts.resinKind
    note('resinKind', facts.resinKind === 'unknown' ? null : facts.resinKind)
  }
  if (facts.volume !== undefined) {
    data.volumeFt3 = facts.volume && convertVolume(facts.volume.value, facts.volume.unit, 'ft3')
    note('volumeFt3', facts.volume)
    keep('volume', facts.volume)
  }
  if (facts.gravel !== undefined) {
    data.gravelLb = facts.gravel && convertMass(facts.gravel.value, facts.gravel.unit, 'lb')
    note('gravelLb', facts.gravel)
    keep('gravel', facts.gravel)
  }
  if (facts.tubeCut !== undefined) {
    data.tubeCutIn = facts.tubeCut && convertLength(facts.tubeCut.value, facts.tubeCut.unit, 'in')
    note('tubeCutIn', facts.tubeCut)
    keep('tubeCut', facts.tubeCut)
  }
  if (facts.backwash !== undefined) {
    note('backwashGpm', facts.backwash)
    keep('backwash', facts.backwash)
  }
  if (facts.began !== undefined) {
    const began = readBegan(facts.began, company)
    data.beganEarliest = dateOf(began?.earliestDay ?? null)
    data.beganLatest = dateOf(began?.latestDay ?? null)
    data.beganAsWritten = began?.asWritten ?? null
    note('began', began)
  }
  if (facts.lastSeenDay !== undefined) {
    data.lastSeenDay = dateOf(facts.lastSeenDay)
    note('lastSeenDay', facts.lastSeenDay)
  }
  checkBedDays({
    beganEarliest: dayOf(data.beganEarliest === undefined ? bed.beganEarliest : data.beganEarliest),
    lastSeenDay: dayOf(data.lastSeenDay === undefined ? bed.lastSeenDay : data.lastSeenDay),
    endedLatest: dayOf(bed.endedLatest),
    company,
  })
  return { ...data, factSources: sources, entered }
}
