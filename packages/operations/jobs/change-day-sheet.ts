import type { ChangeDaySheet } from '@almanac/contract/day-sheets'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { JobKind } from '@almanac/records/job-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import { crewLacks } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { clockIn, instantAt } from '@almanac/units/calendar/zone-clock'
import type { ClockDisplay } from '@almanac/units/format-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { type CrewWanted, refuseClash } from './check-crew.ts'
import { hitByChange, refuseHits } from './hit-by-change.ts'
import { claimSlot, lockSlot, releasePlace } from './lock-slot.ts'
import { breakPromise } from './promises.ts'
import { addMembers } from './write-sheet.ts'

/** The sheet as the screen shows it, for a conflict that shows both values. */
async function sheetNow(tx: Tx, companyId: string, crewDayId: string, timeZone: string) {
  const sheet = await tx.crewDay.findUnique({
    where: { companyId_id: { companyId, id: crewDayId } },
    include: { members: { select: { colleagueId: true } } },
  })
  if (!sheet) return null
  const { version, name, vehicleId, notes, day } = sheet
  const colleagueIds = sheet.members.map((member) => member.colleagueId).sort()
  const [from, until] = [clockIn(timeZone, sheet.startsAt), clockIn(timeZone, sheet.endsAt)]
  return { version, name, vehicleId, notes, day: dayOf(day), colleagueIds, from, until }
}

/** Booked and offered visits go over to the sheet's new people and vehicle, or the whole change is refused. Visits under way or closed stay as they are. */
export async function handOver(tx: Tx, companyId: string, crewDayId: string, crew: CrewWanted, display: ClockDisplay): Promise<void> {
  const visits = await tx.visit.findMany({
    where: { companyId, crewDayId, state: { in: ['offered', 'booked'] } },
    include: { job: { include: { site: { select: { label: true } } } } },
    orderBy: { id: 'asc' },
  })
  for (const visit of visits) {
    const { kind, minutes, crewSize, needsVehicle, site } = visit.job
    const lacks = crewLacks(
      { kind: kind as JobKind, minutes, crewSize, needsVehicle },
      { people: crew.colleagueIds.length, hasVehicle: crew.vehicleId !== null },
    )
    if (lacks) throw new AppError('conflict', `${site.label}: ${lacks} Nothing was changed; move that visit first.`)
    await releasePlace(tx, companyId, visit.id)
  }
  for (const { id, startsAt, endsAt } of visits) {
    const place = { companyId, display, colleagueIds: crew.colleagueIds, vehicleId: crew.vehicleId, startsAt, endsAt }
    await lockSlot(tx, place)
    await claimSlot(tx, place, id)
  }
}

/**
 * Changes a sheet's name, people, vehicle, hours or notes; its booked visits go over to the new crew. Visits that the new hours leave out, or that the people
 * who stay may not do, are named and have to be confirmed; whoever was promised one that is left out goes on the list to call.
 */
export async function changeDaySheet(scope: Scope & { personId: string }, input: ChangeDaySheet) {
  return runCommand(scope, 'jobs.change-day-sheet', input, async (tx, command) => {
    const { companyId } = scope
    const { crewDayId, version, name, vehicleId, notes, from, until } = input
    const display = await companyFacts(tx, companyId)
    const { timeZone } = display
    await lockRows(tx, companyId, 'crew_day', [crewDayId])
    const before = await sheetNow(tx, companyId, crewDayId, timeZone)
    if (!before) throw notFound('day sheet')
    const colleagueIds = [...new Set(input.colleagueIds)].sort()
    const sent = { name, vehicleId, notes, from, until, colleagueIds }
    await expectChanged(before.version === version ? 1 : 0, 'day sheet', version, sent, async () => before)
    const hours = { startsAt: instantAt(timeZone, before.day, from), endsAt: instantAt(timeZone, before.day, until) }
    const hit = await hitByChange(tx, companyId, { crewDayId, before, colleagueIds, ...hours })
    const crew = { day: before.day, name, colleagueIds, vehicleId, ...hours }
    await refuseClash(tx, companyId, crew, crewDayId)
    await tx.crewDay.update({
      where: { companyId_id: { companyId, id: crewDayId } },
      data: { name, vehicleId, notes: notes?.trim() || null, ...hours, version: { increment: 1 } },
    })
    await tx.crewDayMember.deleteMany({ where: { companyId, crewDayId, colleagueId: { notIn: colleagueIds } } })
    await addMembers(
      tx,
      companyId,
      crewDayId,
      colleagueIds.filter((id) => !before.colleagueIds.includes(id)),
    )
    const crewChanged = before.vehicleId !== vehicleId || before.colleagueIds.join() !== colleagueIds.join()
    if (crewChanged) await handOver(tx, companyId, crewDayId, crew, display)
    // What cannot be comes before what is only unusual.
    refuseHits(hit, input.confirmed ?? [], display)
    for (const { visit } of hit.outside)
      if (visit.promisedBy) await breakPromise(tx, command, visit, { note: 'The crew’s hours were shortened.' })
    await command.audit('changed', 'crew-day', crewDayId, { people: colleagueIds, vehicleId, from, until })
    await command.announce('crew-day', crewDayId, version + 1)
    return { crewDayId, version: version + 1 }
  })
}
