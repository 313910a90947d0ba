// A worker that does one task at an instant of its own: the mails of a morning go out by a mail server that a test has set up, whatever the time of day.
import { setClock } from '@almanac/runtime/clock'
import type { QueueName } from '@almanac/runtime/queues'
import { HANDLERS } from '../../../apps/worker/handlers.ts'

const [queue = '', companyId = '', instant = ''] = process.argv.slice(2)
setClock(() => new Date(instant))
await (HANDLERS[queue as QueueName] as (payload: { companyId: string }) => Promise<void>)({ companyId })
process.exit(0)
