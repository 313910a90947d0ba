import { oc } from '@orpc/contract'
import * as z from 'zod'
import { Id, Instant, page, pageOf } from './shared.ts'

/** One fact that was changed. No values where they may say something of a person. `known`: the trail holds both values. */
const AuditChange = z.object({ field: z.string(), known: z.boolean(), from: z.json().nullable(), to: z.json().nullable() })

/** One line of the trail, newest first. `who` is null for the app itself; `operation` and `entity` as stored. */
export const AuditRow = z.object({
  id: Id,
  at: Instant,
  who: z.string().nullable(),
  operation: z.string(),
  entity: z.string(),
  entityId: Id,
  changes: z.array(AuditChange),
  note: z.string().nullable(),
  /** The site it is about, where it is about one that is on record. */
  site: z.object({ id: Id, label: z.string() }).nullable(),
})
export type AuditRow = z.infer<typeof AuditRow>

export const audit = {
  /** Of the firm; with a site, of the site and of everything there. */
  list: oc
    .route({ method: 'GET', path: '/audit' })
    .input(page({ siteId: Id.optional() }))
    .output(pageOf(AuditRow)),
}
