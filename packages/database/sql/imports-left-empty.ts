import type { Tx } from '../client.ts'

/** An applied import some of whose rows speak of softeners that are no longer on record: how many do, and how many speak of one that is. */
export type LeftEmpty = { id: string; gone: number; left: number }

/** Writes down of every other applied import how many of its rows an undoing took the ground from; one with none left counts as undone with it. */
export async function markImportsLeftEmpty(
  tx: Tx,
  companyId: string,
  undone: { batchId: string; fileName: string; softenerIds: readonly string[] },
): Promise<string[]> {
  if (undone.softenerIds.length === 0) return []
  const empty = await tx.$queryRaw<LeftEmpty[]>`
    select r.batch_id as id, (count(*) filter (where o.archived_at is not null))::int as gone, (count(*) filter (where o.archived_at is null))::int as "left"
    from import_row r
    join import_batch b on b.company_id = r.company_id and b.id = r.batch_id and b.state = 'applied' and b.id <> ${undone.batchId}::uuid
    join softener o on o.company_id = r.company_id and o.id = r.softener_id
    where r.company_id = ${companyId}::uuid
    group by r.batch_id having bool_or(r.softener_id = any(${undone.softenerIds}::uuid[]))`
  for (const { id, gone, left } of empty)
    await tx.$executeRaw`
      update import_batch set version = version + 1, state = case when ${left}::int = 0 then 'undone' else state end,
        counts = counts || jsonb_build_object('gone', jsonb_build_object('rows', ${gone}::int, 'fileName', ${undone.fileName}::text))
      where company_id = ${companyId}::uuid and id = ${id}::uuid`
  return empty.map((one) => one.id)
}
