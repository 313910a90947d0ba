import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { type ReminderCandidate, readReminderCandidates } from '@almanac/database/read/reminder-candidates'
import { commandTools } from '@almanac/database/run-command'
import { DROPPED_FOR_LEFT, settleReminders } from '@almanac/database/sql/settle-reminders'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import { openJobStates } from '@almanac/records/job-state'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import type { ReminderContact } from '@almanac/service-rules/reminders/choose-contact'
import { type ReminderSettings, reminderFor } from '@almanac/service-rules/reminders/eligibility'
import { notices } from '@almanac/service-rules/reminders/further-notices'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { type CompanyFacts, companyFacts } from '../shared/company-facts.ts'
import { forNewHolders } from './raise-for-new-holder.ts'
import { raiseFurther } from './raise-further.ts'

const CHUNK = 500

/** Until the firm chooses otherwise: the quickest to answer first. */
const CHANNELS: ReminderSettings['channels'] = ['email', 'text', 'phone', 'letter']

function decide(candidate: ReminderCandidate, settings: ReminderSettings, company: CompanyFacts) {
  return reminderFor(
    { bedId: candidate.bedId, inService: true, dueWindow: { earlyDay: candidate.earlyDay, lateDay: candidate.lateDay } },
    candidate.jobState ? { state: candidate.jobState as JobState } : null,
    candidate.contacts as ReminderContact[],
    settings,
    company.today,
    company,
  )
}

/** Asks again whoever said "not now", once their day has come and nothing happened since: the notice names the day, so that each is asked once. */
async function raiseAgain(tx: Tx, companyId: string, today: string): Promise<number> {
  const due = await tx.reminderAnswer.findMany({
    where: {
      ...{ companyId, kind: 'not-now', askAfter: { lte: dateOf(today) } },
      reminder: {
        contact: { archivedAt: null },
        bed: {
          endedLatest: null,
          archivedAt: null,
          jobs: { none: { kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } } },
        },
      },
    },
    include: { reminder: true },
  })
  const data = due.map(({ askAfter, reminder: { bedId, siteId, contactId, channel, dueEarliest, dueLatest } }) => ({
    ...{ companyId, id: newId(), bedId, siteId, contactId, channel, dueEarliest, dueLatest },
    ...{ notice: `again-${dayOf(askAfter)}`, state: 'waiting', createdAt: now() },
  }))
  return data.length === 0 ? 0 : (await tx.reminder.createMany({ data, skipDuplicates: true })).count
}

/** What a decision to tell somebody becomes; nothing where nobody can be told, or it isn't time. */
function rowOf(candidate: ReminderCandidate, settings: ReminderSettings, company: CompanyFacts & { companyId: string }, notice?: string) {
  const decision = decide(candidate, settings, company)
  if (!decision.due) return []
  const { bedId, siteId, earlyDay, lateDay } = candidate
  const window = { dueEarliest: dateOf(earlyDay), dueLatest: dateOf(lateDay) }
  const to = { contactId: decision.contactId, channel: decision.channel, notice: notice ?? decision.notice }
  return [{ companyId: company.companyId, id: newId(), bedId, siteId, ...to, ...window, state: 'waiting', createdAt: now() }]
}

/** Tells whoever holds a site now of what its holder before was told. */
async function raiseForNewHolders(tx: Tx, companyId: string): Promise<number> {
  const company = { ...(await companyFacts(tx, companyId)), companyId }
  const settings: ReminderSettings = { leadDays: (await settingsIn(tx, companyId)).reminderLeadDays, channels: CHANNELS }
  const all = await forNewHolders(tx, companyId, addDays(company.today, settings.leadDays))
  const data = all.flatMap(({ candidate, notice }) => rowOf(candidate, settings, company, notice))
  return data.length === 0 ? 0 : (await tx.reminder.createMany({ data, skipDuplicates: true })).count
}

type Raised = { bedId: string; notice: string; contactId: string; channel: string; dueEarliest: Date | null; dueLatest: Date | null }

/** What was for somebody who left before it was sent goes to whoever is there now: a bed has one row a notice. */
async function readdress(tx: Tx, companyId: string, raised: readonly Raised[]): Promise<number> {
  const left = await tx.reminder.findMany({
    where: { companyId, bedId: { in: raised.map((one) => one.bedId) }, state: 'dropped', stateReason: DROPPED_FOR_LEFT },
    select: { id: true, bedId: true, notice: true },
  })
  let count = 0
  for (const { id, bedId, notice } of left) {
    const now = raised.find((one) => one.bedId === bedId && one.notice === notice)
    if (!now) continue
    const { contactId, channel, dueEarliest, dueLatest } = now
    const to = { contactId, channel, dueEarliest, dueLatest, state: 'waiting', stateReason: null, version: { increment: 1 } }
    count += (await tx.reminder.updateMany({ where: { companyId, id, state: 'dropped' }, data: to })).count
  }
  return count
}

/**
 * Looks at a company's beds once: drops reminders that are no longer wanted, moves the others with their windows, and raises new ones for windows
 * that have come within the lead time. One bed and one notice have one row for ever, so running it twice, or every night, makes no second one.
 */
export async function raiseReminders({ companyId }: TaskPayloads['raise-reminders']): Promise<void> {
  let after: string | null = null
  let changed = await inCompany({ companyId }, (tx) => settleReminders(tx, companyId))
  for (;;) {
    const found: ReminderCandidate[] = await inCompany({ companyId }, async (tx) => {
      const company = await companyFacts(tx, companyId)
      const settings: ReminderSettings = { leadDays: (await settingsIn(tx, companyId)).reminderLeadDays, channels: CHANNELS }
      const candidates = await readReminderCandidates(tx, companyId, notices[0], addDays(company.today, settings.leadDays), after, CHUNK)
      const data = candidates.flatMap((candidate) => rowOf(candidate, settings, { ...company, companyId }))
      if (data.length > 0) changed += (await tx.reminder.createMany({ data, skipDuplicates: true })).count
      changed += await readdress(tx, companyId, data)
      return candidates
    })
    after = found.at(-1)?.bedId ?? null
    if (found.length < CHUNK) break
  }
  changed += await inCompany({ companyId }, (tx) => raiseForNewHolders(tx, companyId))
  changed += await inCompany({ companyId }, async (tx) => raiseAgain(tx, companyId, (await companyFacts(tx, companyId)).today))
  changed += await inCompany({ companyId }, async (tx) => raiseFurther(tx, companyId, await settingsIn(tx, companyId)))
  if (changed > 0)
    await inCompany({ companyId }, (tx) =>
      commandTools(tx, { companyId, personId: null }, 'reminders.raise', null).announce('reminders', companyId),
    )
}
