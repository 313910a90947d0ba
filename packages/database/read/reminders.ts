import type { MessageRow, ReminderRow } from '@almanac/contract/reminders'
import { type MessageList, messageLists } from '@almanac/records/message-state'
import { dateOf, dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { settingsIn } from './firm-settings.ts'
import { cursorOf, readCursor } from './page-key.ts'

type Page<R> = { rows: R[]; nextCursor: string | null }
type Query = { limit: number; cursor?: string }

/** A reminder without a window sorts last, under a day that never comes. */
const NEVER = '9999-12-31'

/** What a contact is reached at on a channel. */
function addressOf(contact: { email: string | null; phone: string | null }, channel: string): string | null {
  if (channel === 'email') return contact.email
  return channel === 'letter' ? null : contact.phone
}

/** Reminders in one state, the earliest window first. */
export async function readReminders(
  scope: Pick<Scope, 'companyId'>,
  query: Query & { state: ReminderRow['state'] },
): Promise<Page<ReminderRow>> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.reminder.findMany({
      where: {
        companyId,
        state: query.state,
        ...(after ? { OR: [{ dueEarliest: { gt: dateOf(after.sort) } }, { dueEarliest: dateOf(after.sort), id: { gt: after.id } }] } : {}),
      },
      include: { site: { select: { label: true, town: true } }, contact: { select: { name: true, email: true, phone: true } } },
      orderBy: [{ dueEarliest: { sort: 'asc', nulls: 'last' } }, { id: 'asc' }],
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map((row) => ({
      id: row.id,
      version: row.version,
      state: row.state as ReminderRow['state'],
      stateReason: row.stateReason,
      siteId: row.siteId,
      siteLabel: row.site.label,
      town: row.site.town,
      bedId: row.bedId,
      contactName: row.contact.name,
      channel: row.channel as ReminderRow['channel'],
      address: addressOf(row.contact, row.channel),
      dueEarliest: dayOf(row.dueEarliest),
      dueLatest: dayOf(row.dueLatest),
      createdAt: row.createdAt.toISOString(),
    })),
    nextCursor: found.length > query.limit && last ? cursorOf(dayOf(last.dueEarliest) ?? NEVER, last.id) : null,
  }
}

/** How many stand in each state, and the firm's lead time. */
export async function readReminderCounts(scope: Pick<Scope, 'companyId'>) {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const groups = await tx.reminder.groupBy({ by: ['state'], where: { companyId }, _count: true })
    const { reminderLeadDays, sendFrom, sendUntil } = await settingsIn(tx, companyId)
    const count = (state: string) => groups.find((group) => group.state === state)?._count ?? 0
    const messages = await tx.message.groupBy({ by: ['state'], where: { companyId }, _count: true })
    const listed = (list: MessageList) =>
      messages
        .filter((group) => (messageLists[list] as readonly string[]).includes(group.state))
        .reduce((sum, group) => sum + group._count, 0)
    return {
      waiting: count('waiting'),
      held: count('held'),
      released: count('released'),
      dropped: count('dropped'),
      outbox: listed('outbox'),
      check: listed('check'),
      sent: listed('sent'),
      letters: await tx.message.count({ where: { companyId, state: 'approved', channel: 'letter' } }),
      answers: await tx.reminderAnswer.count({ where: { companyId } }),
      ...{ leadDays: reminderLeadDays, sendFrom, sendUntil },
    }
  })
}

/** The messages of one list, the newest first. */
export async function readMessages(scope: Pick<Scope, 'companyId'>, query: Query & { list: MessageList }): Promise<Page<MessageRow>> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.message.findMany({
      where: {
        companyId,
        state: { in: [...messageLists[query.list]] },
        ...(after ? { OR: [{ createdAt: { lt: new Date(after.sort) } }, { createdAt: new Date(after.sort), id: { lt: after.id } }] } : {}),
      },
      include: {
        reminder: { select: { siteId: true, linkUntil: true, site: { select: { label: true } } } },
        visit: { select: { job: { select: { siteId: true, site: { select: { label: true } } } } } },
      },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map((row) => ({
      id: row.id,
      version: row.version,
      state: row.state as MessageRow['state'],
      stateReason: row.stateReason,
      tryAfter: row.tryAfter?.toISOString() ?? null,
      settledAt: row.settledAt?.toISOString() ?? null,
      channel: row.channel as MessageRow['channel'],
      address: row.address,
      subject: row.subject,
      body: row.body,
      siteId: row.reminder?.siteId ?? row.visit?.job.siteId ?? null,
      siteLabel: (row.reminder ?? row.visit?.job)?.site.label ?? null,
      hasFile: row.fileState === 'stored',
      createdAt: row.createdAt.toISOString(),
      reminderId: row.reminderId,
      linkUntil: row.reminder?.linkUntil?.toISOString() ?? null,
    })),
    nextCursor: found.length > query.limit && last ? cursorOf(last.createdAt.toISOString(), last.id) : null,
  }
}
