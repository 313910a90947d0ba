import { config } from '@almanac/runtime/config'
import type { Logger } from '@almanac/runtime/log'
import { ImapFlow } from 'imapflow'
import { PATIENCE_MS } from './posted.ts'

/** Reports older than this were read when they came, or never will be. */
const BACK_DAYS = 14
/** At one look; the next takes the rest. */
const MOST = 200
/** A report holds the mail that came back, and ours are short. */
const MOST_BYTES = 500_000

function connection(address: string, log: Logger): ImapFlow {
  const url = new URL(address)
  const secure = url.protocol === 'imaps:'
  const client = new ImapFlow({
    ...{ host: url.hostname, port: Number(url.port) || (secure ? 993 : 143), secure, logger: false },
    auth: { user: decodeURIComponent(url.username), pass: decodeURIComponent(url.password) },
    ...{ connectionTimeout: PATIENCE_MS, greetingTimeout: PATIENCE_MS, socketTimeout: PATIENCE_MS * 3 },
  })
  client.on('error', ({ code }: { code?: string }) => log.warn({ code }, 'the mailbox of bounces broke off'))
  return client
}

/**
 * Looks through the mailbox for reports of delivery that nobody has read, and hands each to `take`. What it took is marked as read, so that it is handed over once;
 * whatever else lies there stays as it is. What can't be read now is looked at again next time. Answers how many were taken.
 */
export async function readMailbox(take: (source: Buffer) => Promise<boolean>, at: Date, log: Logger): Promise<number> {
  const { BOUNCE_IMAP_URL } = config()
  if (!BOUNCE_IMAP_URL) return 0
  const client = connection(BOUNCE_IMAP_URL, log)
  let taken = 0
  await client.connect()
  try {
    const folder = decodeURIComponent(new URL(BOUNCE_IMAP_URL).pathname.slice(1)) || 'INBOX'
    const lock = await client.getMailboxLock(folder)
    try {
      const since = new Date(at.getTime() - BACK_DAYS * 86_400_000)
      const found = await client.search({ seen: false, since, header: { 'content-type': 'report' } }, { uid: true })
      for (const uid of (found || []).slice(-MOST)) {
        const mail = await client.fetchOne(String(uid), { source: { maxLength: MOST_BYTES } }, { uid: true })
        const source = mail ? mail.source : undefined
        if (!source || !(await take(source))) continue
        await client.messageFlagsAdd(String(uid), ['\\Seen'], { uid: true })
        taken++
      }
    } finally {
      lock.release()
    }
    await client.logout()
  } finally {
    client.close()
  }
  return taken
}
