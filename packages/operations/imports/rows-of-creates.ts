import { dateOf } from '@almanac/database/days'
import { newId } from '@almanac/runtime/ids'
import { columnsOf, type Value } from './facts.ts'
import type { Create, Plan } from './plan-types.ts'
import { CONSENTS, consentRows } from './write-consents.ts'

const text = (value: Value | undefined) => (typeof value === 'string' ? value : null)
const figure = (value: Value | undefined) => (typeof value === 'number' ? value : null)
const day = (value: Value | undefined) => dateOf(text(value))

const DAYS = new Set([
  'installedEarliest',
  'installedLatest',
  'beganEarliest',
  'beganLatest',
  'lastSeenDay',
  'endedEarliest',
  'endedLatest',
])

/** A thing's known columns, days as dates; unknown ones are left to their defaults. */
function known(create: Create): Record<string, unknown> {
  const columns = Object.entries(columnsOf(create.facts)).filter(([column, value]) => value !== null && !(column in CONSENTS))
  return Object.fromEntries(columns.map(([column, value]) => [column, DAYS.has(column) ? dateOf(String(value)) : value]))
}

/** The rows of everything a plan makes, table by table, ready for createMany. */
export function rowsOf(plan: Plan, context: { companyId: string; batchId: string; fileName: string; today: string }) {
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
    bed: bed.map((one) => ({ ...base(one), tankId: one.parents.tank, entered: one.entered, factSources: one.sources })),
    waterTest: test.map((one) => {
      const columns = columnsOf(one.facts)
      return {
        ...{ companyId, id: one.id, batchId, siteId: one.parents.site, softenerId: one.parents.softener, point: 'raw' },
        day: day(columns.day) ?? dateOf(today),
        ...{ hardnessGpg: figure(columns.hardnessGpg), ironMgL: figure(columns.ironMgL) },
        ...{ freeChlorineMgL: figure(columns.freeChlorineMgL), totalChlorineMgL: figure(columns.totalChlorineMgL) },
        ...{ entered: one.entered, source: `import ${fileName} line ${one.line}` },
      }
    }),
  }
}
