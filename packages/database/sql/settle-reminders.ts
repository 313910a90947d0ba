import { bedRenewingKinds } from '@almanac/records/job-kind'
import type { Tx } from '../client.ts'

/** Reasons written by the nightly look; a reminder dropped for the first comes back when the job is called off. */
const DROPPED_FOR_JOB = 'a job for this bed is open'
const DROPPED_FOR_END = 'the bed is no longer in service'
const DROPPED_FOR_ANSWER = 'the customer has answered'
/** The site has another customer, or the contact was archived: whoever is reached there now is told in its place. */
export const DROPPED_FOR_LEFT = 'the contact no longer belongs to this site'

/**
 * Brings standing reminders up to date: dropped once the bed has an open rebed or has ended, its customer answered another notice, or the contact left the site; waiting again when that job was
 * called off, and moved with the window. A reminder that was released stays as it is. Answers how many rows changed.
 */
export async function settleReminders(tx: Tx, companyId: string): Promise<number> {
  const dropped = await tx.$executeRaw`
    update reminder r set state = 'dropped', version = r.version + 1,
      state_reason = case when b.ended_latest is null then ${DROPPED_FOR_JOB} else ${DROPPED_FOR_END} end
    from bed b where r.company_id = ${companyId}::uuid and b.company_id = r.company_id and b.id = r.bed_id and r.state in ('waiting', 'held')
      and (b.ended_latest is not null or b.archived_at is not null or exists (select from job j where j.company_id = r.company_id and j.bed_id = r.bed_id
        and j.kind = any(${[...bedRenewingKinds]}) and j.state in ('proposed', 'booked', 'under-way', 'held')))`
  const answered = await tx.$executeRaw`
    update reminder r set state = 'dropped', state_reason = ${DROPPED_FOR_ANSWER}, version = r.version + 1
    where r.company_id = ${companyId}::uuid and r.state in ('waiting', 'held') and exists (select from reminder o
      join reminder_answer a on a.company_id = o.company_id and a.reminder_id = o.id
      where o.company_id = r.company_id and o.bed_id = r.bed_id and a.created_at > r.created_at)`
  const left = await tx.$executeRaw`
    update reminder r set state = 'dropped', state_reason = ${DROPPED_FOR_LEFT}, version = r.version + 1
    from contact c where r.company_id = ${companyId}::uuid and c.company_id = r.company_id and c.id = r.contact_id and r.state in ('waiting', 'held')
      and (c.archived_at is not null or (c.site_id is distinct from r.site_id and not exists (select from tenure t where t.company_id = r.company_id
        and t.site_id = r.site_id and t.customer_id = c.customer_id and t.to_day is null)))`
  const back = await tx.$executeRaw`
    update reminder r set state = 'waiting', state_reason = null, version = r.version + 1
    from bed b where r.company_id = ${companyId}::uuid and b.company_id = r.company_id and b.id = r.bed_id and r.state = 'dropped'
      and r.state_reason = ${DROPPED_FOR_JOB} and b.ended_latest is null and b.archived_at is null
      and not exists (select from job j where j.company_id = r.company_id and j.bed_id = r.bed_id and j.kind = any(${[...bedRenewingKinds]})
        and j.state in ('proposed', 'booked', 'under-way', 'held', 'closed') and j.created_at >= r.created_at)`
  const moved = await tx.$executeRaw`
    update reminder r set due_earliest = f.due10_day, due_latest = f.due90_day, version = r.version + 1
    from bed_forecast f where r.company_id = ${companyId}::uuid and f.company_id = r.company_id and f.bed_id = r.bed_id and r.state in ('waiting', 'held')
      and (r.due_earliest is distinct from f.due10_day or r.due_latest is distinct from f.due90_day)`
  return dropped + answered + left + back + moved
}
