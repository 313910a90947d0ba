import type { SupplyKind } from '@almanac/records/supply-kind'
import { inCompany, type Scope } from '../in-company.ts'

/** The company's water supplies, for choosing a site's. */
export async function readSupplyChoices(scope: Pick<Scope, 'companyId'>) {
  return inCompany(scope, async (tx) => {
    const found = await tx.waterSupply.findMany({
      where: { companyId: scope.companyId, archivedAt: null },
      select: { id: true, name: true, kind: true, _count: { select: { sites: { where: { archivedAt: null } } } } },
      // Towns before private wells, of which there may be hundreds.
      orderBy: [{ kind: 'desc' }, { name: 'asc' }],
    })
    return found.map(({ _count, ...supply }) => ({ ...supply, kind: supply.kind as SupplyKind, sites: _count.sites }))
  })
}

/** Customers whose name, as written, begins with `q`; ten at most. */
export async function readCustomerChoices(scope: Pick<Scope, 'companyId'>, q: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const found = await tx.customer.findMany({
      // Names are few enough in one company to be looked through; nothing else waits for this.
      where: { companyId, archivedAt: null, name: { contains: q, mode: 'insensitive' } },
      select: { id: true, name: true, reference: true, _count: { select: { tenures: { where: { toDay: null } } } } },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
      take: 10,
    })
    return found.map(({ _count, ...customer }) => ({ ...customer, sites: _count.tenures }))
  })
}
