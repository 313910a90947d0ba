import type { ArchivedRow } from '@almanac/contract/archive'
import type { ArchiveReason } from '@almanac/records/archive-reason'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

type Row = Omit<ArchivedRow, 'archivedAt' | 'reason'> & { archivedAt: Date; reason: string }

/** What was archived for a reason, the latest first. What went with it (a site's softeners) comes back with it and is not listed. */
export async function readArchived(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
): Promise<{ rows: ArchivedRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const [at, id] = [after?.sort ?? null, after?.id ?? null]
  const found = await inCompany(
    scope,
    (tx) => tx.$queryRaw<Row[]>`
      select * from (
        select 'customer' as kind, id, version, name as label, archive_reason as reason, archived_at as "archivedAt"
          from customer where company_id = ${companyId}::uuid and archived_at is not null and archive_reason is not null and erased_at is null
        union all select 'site', id, version, label, archive_reason, archived_at
          from site where company_id = ${companyId}::uuid and archived_at is not null and archive_reason is not null
        union all select 'softener', s.id, s.version, p.label || ', ' || s.label, s.archive_reason, s.archived_at
          from softener s join site p on p.company_id = s.company_id and p.id = s.site_id
          where s.company_id = ${companyId}::uuid and s.archived_at is not null and s.archive_reason is not null
      ) a where ${at}::timestamptz is null or (a."archivedAt", a.id) < (${at}::timestamptz, ${id}::uuid)
      order by a."archivedAt" desc, a.id desc limit ${query.limit + 1}`,
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map((row) => ({ ...row, reason: row.reason as ArchiveReason, archivedAt: row.archivedAt.toISOString() })),
    nextCursor: found.length > query.limit && last ? cursorOf(last.archivedAt.toISOString(), last.id) : null,
  }
}
