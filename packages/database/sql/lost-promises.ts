import type { Tx } from '../client.ts'

/**
 * Promises that are lost without anybody to tell the customer: a promised visit that came off, or stands outside its window, with no entry on the list of whom
 * to call; and entries said to be kept though no visit of their job carries the promise and nobody is to be called about it again. Empty in a company whose records are right.
 */
export const lostPromises = (tx: Tx, companyId: string) =>
  tx.$queryRaw<{ visitId: string; why: string }[]>`
    select v.id as "visitId", case when v.state = 'called-off' then 'came off' else 'stands at another time' end as why
    from visit v
    where v.company_id = ${companyId}::uuid and v.promised_by is not null
      and (v.state = 'called-off' or (v.state = 'booked' and (v.starts_at < v.arrive_from or v.starts_at > v.arrive_until)))
      and not exists (select from call_back c where c.company_id = v.company_id and c.visit_id = v.id and c.cause = 'promise'
        and (c.state in ('open', 'done') or v.state = 'called-off'))
    union all
    select c.visit_id, 'said to be kept' from call_back c
    where c.company_id = ${companyId}::uuid and c.cause = 'promise' and c.state = 'kept'
      and not exists (select from visit o where o.company_id = c.company_id and o.job_id = c.job_id and o.promised_by is not null
        and (o.id <> c.visit_id or o.state <> 'called-off'))
      and not exists (select from call_back d where d.company_id = c.company_id and d.visit_id = c.visit_id and d.cause = 'promise'
        and d.state in ('open', 'done'))`
