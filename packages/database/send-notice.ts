import { CHANNEL } from '@almanac/runtime/live'
import { appClient } from './client.ts'

/** Sends a text on the channel of changes over the connections that changes are sent on, outside of any company. */
export async function sendNotice(text: string): Promise<void> {
  await appClient().$executeRaw`select pg_notify(${CHANNEL}, ${text})`
}
