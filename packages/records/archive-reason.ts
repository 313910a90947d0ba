/** Why a customer, a site or a softener is no longer looked after. */
export const archiveReasons = ['unit-removed', 'left', 'sold', 'closed', 'twice', 'other'] as const
export type ArchiveReason = (typeof archiveReasons)[number]
export const archiveReasonWords: Record<ArchiveReason, string> = {
  'unit-removed': 'Unit removed',
  left: 'Customer left us',
  sold: 'Sold, new owner declined',
  closed: 'House empty or gone',
  twice: 'Entered twice',
  other: 'Another reason',
}

/** What can be archived with a reason, and brought back. */
export const archivables = ['customer', 'site', 'softener'] as const
export type Archivable = (typeof archivables)[number]
export const archivableWords: Record<Archivable, string> = { customer: 'Customer', site: 'Site', softener: 'Softener' }
