import { newId } from '@almanac/runtime/ids'
import { columnsOf, type Value } from './facts.ts'
import type { Create, ImportPlan } from './plan-types.ts'
import { CONSENTS, consentRows } from './write-consents.ts'

const text = (value: Value | undefined) => (typeof value === 'string' ? value : null)

/** A thing's columns, without the answers to consent, which stand in rows of their own. */
function known(create: Create): Record<string, Value> {
  return Object.fromEntries(Object.entries(columnsOf(create.facts)).filter(([column]) => !(column in CONSENTS)))
}

/** The rows of everything a plan makes, table by table, ready to be inserted; days as text. */
export function rowsOf(plan: ImportPlan, context: { companyId: string; batchId: string; fileName: string; today: string }) {
  const { companyId, batchId, fileName, today } = context
  const { customer, contact, site, softener, tank, bed, test } = plan.creates
  const base = (create: Create) => ({ ...known(create), companyId, id: create.id, batchId })
  const label = (create: Create) => text(columnsOf(create.facts).label)
  return {
    customer: customer.map((one) => ({ ...base(one), name: text(columnsOf(one.facts).name) ?? 'unnamed', matchKey: one.key })),
    contact: contact.map((one) => ({ ...base(one), customerId: one.parents.customer, role: 'payer' })),
    consent: contact.flatMap((one) => consentRows(companyId, one.id, one.facts, today)),
    site: site.map((one) => ({ ...base(one), label: label(one) ?? 'unnamed', matchKey: one.key })),
    tenure: site.map((one) => ({ companyId, id: newId(), siteId: one.id, customerId: one.parents.customer })),
    softener: softener.map((one) => ({
      ...base(one),
      siteId: one.parents.site,
      label: label(one) ?? (one.tankCount > 1 ? 'Twin softener' : 'Softener'),
      arrangement: one.tankCount > 1 ? 'twin-alternating' : 'single',
      matchKey: one.key,
    })),
    tank: tank.map((one) => ({ ...base(one), softenerId: one.parents.softener, position: one.position, factSources: one.sources })),
    bed: bed.map((one) => ({
      ...{ resinKind: 'unknown', ...base(one) },
      ...{ tankId: one.parents.tank, entered: one.entered, factSources: one.sources },
    })),
    waterTest: test.map((one) => ({
      ...{ day: today, ...base(one) },
      ...{ siteId: one.parents.site, softenerId: one.parents.softener, point: 'raw', entered: one.entered },
      source: `import ${fileName} line ${one.line}`,
    })),
  }
}
