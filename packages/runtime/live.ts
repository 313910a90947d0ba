import pg from 'pg'
import { log } from './log.ts'

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

/**
 * One listening connection a process, fanned out to its open streams. A lost connection is opened again, and each listener is told
 * `{entity: 'everything'}`, since changes may have passed unheard.
 */
export class LiveChanges {
  #url: string
  #listeners = new Map<string, Set<Listener>>()
  #client: pg.Client | undefined
  #starting: Promise<void> | undefined
  #stopped = false

  constructor(url: string) {
    this.#url = url
  }

  async #connect(): Promise<void> {
    const client = new pg.Client({ connectionString: this.#url, keepAlive: true })
    client.on('notification', (message) => this.#hear(message.payload ?? ''))
    client.on('error', (error) => log().warn({ error: error.message }, 'live changes: connection lost'))
    client.on('end', () => void this.#again(client))
    await client.connect()
    await client.query(`LISTEN ${CHANNEL}`)
    this.#client = client
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
    await this.#client?.end()
  }
}
