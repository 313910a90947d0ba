import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { lapseOffers } from './end-offer.ts'

/** The worker's sweep: frees what was offered to customers who did not choose in time. Running it twice changes nothing more. */
export async function lapseCompanyOffers({ companyId }: TaskPayloads['lapse-offers']): Promise<void> {
  await inCompany({ companyId }, (tx) => lapseOffers(tx, commandTools(tx, { companyId, personId: null }, 'jobs.lapse-offers', null)))
}
