import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import { log } from './log.ts'

const DEAF =
  'live changes: nothing that is sent arrives, so open pages do not change by themselves. Behind a pooler that lends connections for single transactions, give LIVE_DATABASE_URL a direct address.'

/** What a notification says: which record changed, and nothing more. Readers fetch it again under their own rights. */
export type Change = { company: string; entity: string; id: string; version?: number }

/** The PostgreSQL channel of changes. */
export const CHANNEL = 'almanac_change'

/** A notice as a change; null for what is none: any login that connects may say anything on a channel. */
function readChange(payload: string): Change | null {
  try {
    const { company, entity, id, version } = JSON.parse(payload) as Record<string, unknown>
    if (typeof company !== 'string' || typeof entity !== 'string' || typeof id !== 'string') return null
    return { company, entity, id, version: typeof version === 'number' ? version : undefined }
  } catch {
    return null
  }
}

type Listener = (change: Change) => void

const AGAIN_AFTER_MS = 1000

/** Sends a text on the channel the way the app's changes are sent, and how often it must be heard, and how soon. */
export type Knock = { send: (payload: string) => Promise<unknown>; everyMs: number; withinMs: number }

/** Whether changes arrive: not known before the first knock. */
export type Hearing = 'unknown' | 'hears' | 'deaf'

/**
 * One listening connection a process, fanned out to its open streams. A lost connection is opened again, and each listener is told
 * `{entity: 'everything'}`, since changes may have passed unheard. A connection can be open and deaf, as behind a pooler that lends a connection for one
 * transaction: so a knock is sent every few seconds the way changes are, and silence is logged and listened against anew.
 */
export class LiveChanges {
  #url: string
  #listeners = new Map<string, Set<Listener>>()
  #client: pg.Client | undefined
  #starting: Promise<void> | undefined
  #stopped = false
  #knock: Knock | undefined
  #waiting: { text: string; heard: () => void } | undefined
  #timer: NodeJS.Timeout | undefined
  #hearing: Hearing = 'unknown'

  constructor(url: string, knock?: Knock) {
    this.#url = url
    this.#knock = knock
  }

  /** Whether what is sent arrives, as of the last knock. */
  get hearing(): Hearing {
    return this.#hearing
  }

  async #connect(): Promise<void> {
    const client = new pg.Client({ connectionString: this.#url, keepAlive: true })
    client.on('notification', (message) => this.#hear(message.payload ?? ''))
    client.on('error', (error) => log().warn({ error: error.message }, 'live changes: connection lost'))
    client.on('end', () => void this.#again(client))
    await client.connect()
    await client.query(`LISTEN ${CHANNEL}`)
    this.#client = client
    if (this.#knock) this.#knockLater(client, this.#knock, 0)
  }

  #knockLater(client: pg.Client, knock: Knock, afterMs: number): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(async () => {
      const heard = await this.#isHeard(knock)
      if (this.#stopped || this.#client !== client) return
      if (heard === 'deaf') {
        if (this.#hearing !== 'deaf') log().error(DEAF)
        this.#hearing = 'deaf'
        await client.end().catch(() => undefined) // and listen anew
        return
      }
      if (heard === 'hears') {
        if (this.#hearing === 'deaf') log().info('live changes: heard again')
        this.#hearing = 'hears'
      }
      this.#knockLater(client, knock, knock.everyMs)
    }, afterMs).unref()
  }

  /** A knock that could not be sent tells nothing of hearing: the database is away, which others notice. */
  async #isHeard({ send, withinMs }: Knock): Promise<Hearing> {
    const text = `knock ${randomUUID()}`
    const heard = new Promise<Hearing>((resolve) => {
      this.#waiting = { text, heard: () => resolve('hears') }
    })
    try {
      await send(text)
    } catch {
      return 'unknown'
    }
    const late = new AbortController()
    const answer = await Promise.race([heard, sleep(withinMs, 'deaf' as const, { signal: late.signal })])
    late.abort()
    return answer
  }

  /** Listens again, however long it takes; then all are told, for changes may have passed unheard meanwhile. */
  async #again(ended: pg.Client): Promise<void> {
    if (this.#stopped || this.#client !== ended) return
    this.#client = undefined
    this.#starting = undefined
    for (let listening = false; !listening && !this.#stopped; ) {
      await new Promise((done) => setTimeout(done, AGAIN_AFTER_MS))
      listening = await this.start().then(
        () => true,
        (error: Error) => {
          log().error({ error: error.message }, 'live changes: cannot listen')
          return false
        },
      )
    }
    for (const [company, set] of this.#listeners) for (const tell of set) tell({ company, entity: 'everything', id: company })
  }

  #hear(payload: string): void {
    if (payload.startsWith('knock ')) {
      if (this.#waiting?.text === payload) this.#waiting.heard()
      return
    }
    if (payload.startsWith('knock ')) {
      if (this.#waiting?.text === payload) this.#waiting.heard()
      return
    }
    const change = readChange(payload)
    if (!change) log().warn('live changes: a notice that cannot be read was passed over')
    else for (const tell of this.#listeners.get(change.company) ?? []) tell(change)
  }

  /** Starts listening; later calls wait for the first. */
  start(): Promise<void> {
    this.#starting ??= this.#connect().catch((error: unknown) => {
      this.#starting = undefined
      throw error
    })
    return this.#starting
  }

  /** Calls `tell` for each change in the company until the returned function is called. */
  subscribe(companyId: string, tell: Listener): () => void {
    const set = this.#listeners.get(companyId) ?? new Set()
    this.#listeners.set(companyId, set)
    set.add(tell)
    return () => {
      set.delete(tell)
      if (set.size === 0) this.#listeners.delete(companyId)
    }
  }

  async stop(): Promise<void> {
    this.#stopped = true
    clearTimeout(this.#timer)
    await this.#client?.end()
  }
}
