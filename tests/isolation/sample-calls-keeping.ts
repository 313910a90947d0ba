import { page, type Sample, type SampleIds, version } from './sample-call.ts'

const reason = 'twice'
export const archive: Record<string, Sample> = {
  list: { roles: 'od', input: () => page },
  softener: { roles: 'od', input: (r) => ({ softenerId: r.idleSoftenerId, version, reason }), other: { reason: 'left' } },
  site: { roles: 'od', input: (r) => ({ siteId: r.idleSiteId, version, reason }), other: { reason: 'left' } },
  customer: { roles: 'od', input: (r) => ({ customerId: r.otherCustomerId, version, reason }), other: { reason: 'left' } },
  restoreSoftener: { roles: 'od', input: (r) => ({ softenerId: r.archivedSoftenerId, version }) },
  restoreSite: { roles: 'od', input: (r) => ({ siteId: r.archivedSiteId, version }) },
  restoreCustomer: { roles: 'od', input: (r) => ({ customerId: r.archivedCustomerId, version }) },
}

export const audit: Record<string, Sample> = { list: { roles: 'o', input: (r) => ({ ...page, siteId: r.siteId }) } }

export const closing: Record<string, Sample> = {
  close: { roles: 'o', input: (r) => ({ companyId: r.companyId }) },
  keep: { roles: 'o', input: (r) => ({ companyId: r.companyId }) },
}

export const merging: Record<string, Sample> = {
  list: { roles: 'od', input: () => page },
  townsOfSites: { roles: 'od' },
  customers: { roles: 'od', input: (r) => ({ keptId: r.customerId, goneId: r.otherCustomerId }) },
  sites: { roles: 'od', input: (r) => ({ keptId: r.siteId, goneId: r.idleSiteId }) },
  supplies: { roles: 'od', input: (r) => ({ keptId: r.waterSupplyId, goneId: r.spareSupplyId }) },
  towns: { roles: 'od', input: () => ({ from: 'Larkmoor', to: 'Lark Moor' }), other: { to: 'Larkmore' } },
  beforeUndo: { roles: 'od', input: (r) => ({ mergingId: r.mergingId }) },
  undo: { roles: 'od', input: (r) => ({ mergingId: r.mergingId, version }) },
}

export const erase: Record<string, Sample> = {
  previewCustomer: { roles: 'o', input: (r) => ({ customerId: r.customerId }) },
  previewColleague: { roles: 'o', input: (r) => ({ colleagueId: r.freeColleagueId }) },
  previewContact: { roles: 'o', input: (r) => ({ contactId: r.spareContactId }) },
  customer: { roles: 'o', input: (r) => ({ customerId: r.customerId, version }) },
  contact: { roles: 'o', input: (r) => ({ contactId: r.spareContactId, version }) },
  colleague: { roles: 'o', input: (r) => ({ colleagueId: r.freeColleagueId, version }) },
}

export const exports: Record<string, Sample> = { list: { roles: 'o' }, start: { roles: 'o' } }

const draft = (r: SampleIds) => ({ batchId: r.draftBatchId, version })
const columns = [
  { column: 0, field: 'customerName' },
  { column: 1, field: 'street' },
]

export const imports: Record<string, Sample> = {
  list: { roles: 'o', input: () => page },
  batch: { roles: 'o', input: (r) => ({ batchId: r.batchId }) },
  rows: { roles: 'o', input: (r) => ({ ...page, batchId: r.batchId, only: 'all' }) },
  check: {
    roles: 'o',
    input: (r) => ({ ...draft(r), columns, supplies: [{ name: 'town', choice: { to: 'supply', waterSupplyId: r.waterSupplyId } }] }),
  },
  apply: { roles: 'o', input: draft },
  readAgain: { roles: 'o', input: (r) => ({ ...draft(r), sheet: null, headingLine: 1 }) },
  discard: { roles: 'o', input: draft },
  beforeUndo: { roles: 'o', input: (r) => ({ batchId: r.batchId }) },
  undo: { roles: 'o', input: (r) => ({ batchId: r.batchId, version }) },
}
