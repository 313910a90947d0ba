import { readDueBeds } from '@almanac/database/read/due-beds'
import { readJobs } from '@almanac/database/read/job-list'
import { readMessages, readReminders } from '@almanac/database/read/reminders'
import { readSites } from '@almanac/database/read/sites-list'
import { readSupplies } from '@almanac/database/read/water-supplies'
import { readWeakestRecords } from '@almanac/database/read/weakest-records'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import type { List } from './measure.ts'

/** The app's lists at their usual page size, each beside the read that its procedure calls. */
export function listsOf(companyId: string, today: string): List[] {
  const scope = { companyId }
  const limit = 50
  const list = (name: string, procedure: string, input: object, read: () => Promise<unknown>): List => ({ name, procedure, input, read })
  const search = (q: string) =>
    list(`sites matching "${q}"`, 'sites/list', { q, limit }, () => readSites(scope, { terms: queryTerms(q), limit }))
  return [
    list('sites', 'sites/list', { limit }, () => readSites(scope, { terms: [], limit })),
    search('mill'),
    search('10x54'),
    list('jobs proposed', 'jobs/list', { state: 'proposed', limit }, () => readJobs(scope, { state: 'proposed', limit })),
    list('jobs closed', 'jobs/list', { state: 'closed', limit }, () => readJobs(scope, { state: 'closed', limit })),
    list('water supplies', 'water/supplies', { limit }, () => readSupplies(scope, { limit }, today)),
    list('beds coming due', 'due/beds', { sort: 'chance', limit }, () => readDueBeds(scope, { sort: 'chance', limit }, today)),
    list('ask at the next call', 'beds/askNext', { limit }, () => readWeakestRecords(scope, { limit })),
    list('reminders waiting', 'reminders/list', { state: 'waiting', limit }, () => readReminders(scope, { state: 'waiting', limit })),
    list('messages', 'reminders/messages', { list: 'outbox', limit }, () => readMessages(scope, { list: 'outbox', limit })),
  ]
}
