import type { AnswerRow } from '@almanac/contract/reminders'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

/** What customers answered by the link, the newest first. */
export async function readAnswers(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
): Promise<{ rows: AnswerRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.reminderAnswer.findMany({
      where: {
        companyId,
        ...(after ? { OR: [{ createdAt: { lt: new Date(after.sort) } }, { createdAt: new Date(after.sort), id: { lt: after.id } }] } : {}),
      },
      include: { reminder: { select: { siteId: true, site: { select: { label: true } }, contact: { select: { name: true } } } } },
      orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map(({ reminder, ...row }) => ({
      ...{ id: row.id, kind: row.kind as AnswerRow['kind'], days: row.days, doneBy: row.doneBy as AnswerRow['doneBy'] },
      ...{ askAfter: dayOf(row.askAfter), doneDay: dayOf(row.doneDay), createdAt: row.createdAt.toISOString() },
      ...{ siteId: reminder.siteId, siteLabel: reminder.site.label, contactName: reminder.contact.name },
    })),
    nextCursor: found.length > query.limit && last ? cursorOf(last.createdAt.toISOString(), last.id) : null,
  }
}
