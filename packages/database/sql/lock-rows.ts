import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'

type Lockable =
  | 'agreement'
  | 'bed'
  | 'colleague'
  | 'crew_day'
  | 'forecast_run'
  | 'job'
  | 'message'
  | 'owner_guide'
  | 'plan_proposal'
  | 'reminder'
  | 'stock_item'
  | 'tank'
  | 'vehicle'
  | 'visit'
  | 'water_supply'
  | 'window_offer'
  | 'call_back'

/** `change`: against every other change. `share`: against changes, but not against others who only want the rows to stay as they are. */
const STRENGTH = { change: Prisma.raw('no key update'), share: Prisma.raw('share') }

/**
 * Locks rows of one table until the transaction ends, in id order, so that two who want the same rows stand in line and never wait in a circle. Not
 * FOR UPDATE: that would also wait for foreign keys being checked against these rows, in whatever order, and so could end in a deadlock. Ids that are
 * not there lock nothing.
 */
export async function lockRows(
  tx: Tx,
  companyId: string,
  table: Lockable,
  ids: readonly string[],
  strength: keyof typeof STRENGTH = 'change',
): Promise<void> {
  await tx.$queryRaw`
    select 1 from ${Prisma.raw(`"${table}"`)} where company_id = ${companyId}::uuid and id = any(${ids}::uuid[]) order by id for ${STRENGTH[strength]}`
}
