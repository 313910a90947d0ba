import { archivables, archiveReasons } from '@almanac/records/archive-reason'
import { oc } from '@orpc/contract'
import * as z from 'zod'
import { command, Id, Instant, page, pageOf, Version } from './shared.ts'

const reason = z.enum(archiveReasons)
const Changed = z.object({ id: Id, version: Version })

/** One thing that was archived for a reason. `siteId` is null for a customer. */
export const ArchivedRow = z.object({
  kind: z.enum(archivables),
  id: Id,
  version: Version,
  label: z.string(),
  reason,
  archivedAt: Instant,
})
export type ArchivedRow = z.infer<typeof ArchivedRow>

export const ArchiveSoftener = command({ softenerId: Id, version: Version, reason })
export type ArchiveSoftener = z.infer<typeof ArchiveSoftener>
export const ArchiveSite = command({ siteId: Id, version: Version, reason })
export type ArchiveSite = z.infer<typeof ArchiveSite>
export const ArchiveCustomer = command({ customerId: Id, version: Version, reason })
export type ArchiveCustomer = z.infer<typeof ArchiveCustomer>
export const RestoreSoftener = command({ softenerId: Id, version: Version })
export type RestoreSoftener = z.infer<typeof RestoreSoftener>
export const RestoreSite = command({ siteId: Id, version: Version })
export type RestoreSite = z.infer<typeof RestoreSite>
export const RestoreCustomer = command({ customerId: Id, version: Version })
export type RestoreCustomer = z.infer<typeof RestoreCustomer>

const post = (path: `/${string}`) => oc.route({ method: 'POST', path })

/** Out of every list and forecast, for a reason, with all history kept; and back. */
export const archive = {
  list: oc.route({ method: 'GET', path: '/archive' }).input(page({})).output(pageOf(ArchivedRow)),
  softener: post('/archive/softener').input(ArchiveSoftener).output(Changed),
  site: post('/archive/site').input(ArchiveSite).output(Changed),
  /** With the sites they hold. */
  customer: post('/archive/customer').input(ArchiveCustomer).output(Changed),
  restoreSoftener: post('/archive/softener/back').input(RestoreSoftener).output(Changed),
  restoreSite: post('/archive/site/back').input(RestoreSite).output(Changed),
  restoreCustomer: post('/archive/customer/back').input(RestoreCustomer).output(Changed),
}
