import { setTimeout as sleep } from 'node:timers/promises'
import { newId } from '@almanac/runtime/ids'
import type { Stack } from './stack.ts'

type Line = { visitId: string; kind: string; state: string }
type Answer = { status: number; json: Record<string, unknown> }

/** What was sent and acknowledged, and what was answered meanwhile. */
export type Done = {
  supplies: { name: string; acknowledged: boolean }[]
  imports: { batchId: string; prefix: string; rows: number; acknowledged: boolean }[]
  closed: string[]
  accepted: string[]
  refits: number
  /** How often each status came; 0 is no answer at all. */
  statuses: Record<number, number>
  /** Commands that were refused for good, in short: a plan whose day sheets changed meanwhile, say. */
  refused: string[]
  /** Answers of 500 and above that are not 503, in short. */
  strange: string[]
  /** Commands that were acknowledged, and when the last one was (performance.now). */
  acknowledged: number
  last: number
}

const ROWS = 40

/** People at work while things break: each command is sent with the same id until it is answered, as the screens do. */
export class Work {
  readonly done: Done = {
    supplies: [],
    imports: [],
    closed: [],
    accepted: [],
    refits: 0,
    statuses: {},
    strange: [],
    refused: [],
    acknowledged: 0,
    last: 0,
  }
  #stack: Stack
  /** What is being asked for just now. */
  readonly underWay = new Set<string>()
  #cookie = ''
  #ended = false
  #loops: Promise<void>[] = []

  constructor(stack: Stack) {
    this.#stack = stack
  }

  async signIn(): Promise<void> {
    const { port, baseUrl } = this.#stack
    const answer = await fetch(`http://localhost:${port}/api/auth/sign-in/email`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: baseUrl },
      body: JSON.stringify(this.#stack.signIn('owner')),
    })
    if (!answer.ok) throw new Error(`signing in answered ${answer.status}: ${(await answer.text()).slice(0, 300)}`)
    this.#cookie = answer.headers
      .getSetCookie()
      .map((one) => one.split(';')[0])
      .join('; ')
  }

  async #send(path: string, body: string, type: string): Promise<Answer> {
    const headers = { cookie: this.#cookie, origin: this.#stack.baseUrl, 'content-type': type, 'x-csrf-token': 'orpc' }
    let status = 0
    let text = ''
    try {
      const answer = await fetch(`${this.#stack.baseUrl}${path}`, { method: 'POST', headers, body, signal: AbortSignal.timeout(20_000) })
      text = await answer.text()
      status = answer.status
    } catch {
      // nobody answered, or the answer broke off
    }
    this.done.statuses[status] = (this.done.statuses[status] ?? 0) + 1
    if (status >= 500 && status !== 503) this.done.strange.push(`${path} ${status} ${text.slice(0, 120)}`)
    try {
      const parsed = JSON.parse(text) as Record<string, unknown>
      return { status, json: (parsed.json ?? parsed) as Record<string, unknown> }
    } catch {
      return { status, json: {} }
    }
  }

  /** Asks, until there is an answer that is not a passing failure; undefined when the work has ended before. */
  async #until(path: string, body: string, type = 'application/json'): Promise<Answer | undefined> {
    for (;;) {
      const answer = await this.#send(path, body, type)
      if (answer.status > 0 && answer.status < 500 && answer.status !== 429) return answer
      if (this.#ended) return undefined
      await sleep(150)
    }
  }

  async #command(procedure: string, input: object): Promise<Answer | undefined> {
    this.underWay.add(procedure)
    const answer = await this.#until(`/api/rpc/${procedure}`, JSON.stringify({ json: { ...input, commandId: newId() } }))
    this.underWay.delete(procedure)
    if (answer?.status !== 200) return answer
    this.done.last = performance.now()
    this.done.acknowledged++
    return answer
  }

  #read = async (procedure: string, input: object) =>
    (await this.#until(`/api/rpc/${procedure}`, JSON.stringify({ json: input })))?.json ?? {}

  async #addSupplies(): Promise<void> {
    while (!this.#ended) {
      const supply = { name: `Supply ${newId()}`, acknowledged: false }
      this.done.supplies.push(supply)
      supply.acknowledged = (await this.#command('water/addSupply', { name: supply.name, kind: 'town' }))?.status === 200
      await sleep(60)
    }
  }

  async #import(): Promise<void> {
    while (!this.#ended) {
      const prefix = `F${newId().slice(-10)}`
      const lines = Array.from(
        { length: ROWS },
        (_, n) => `${prefix}-${n},Family ${prefix} ${n},${n} Fault Road,Weirbrook,10x54,2015-05-12`,
      )
      const csv = ['Customer no.,Name,Street,Town,Tank,Installed', ...lines].join('\n')
      // An upload has no id of its own: one that got no answer may have left a draft, which changes nothing. The next one waits until it is read.
      const batchId = (await this.#until(`/api/imports?name=${prefix}.csv`, csv, 'text/csv'))?.json.batchId as string | undefined
      if (!batchId) continue
      let draft = await this.#read('imports/batch', { batchId })
      for (; draft.state === 'reading' && !this.#ended; draft = await this.#read('imports/batch', { batchId })) await sleep(200)
      const columns = ((draft.columns ?? []) as Record<string, unknown>[]).map(
        ({ column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder }) => ({
          ...{ column, field, hardnessUnit, concentrationUnit, volumeUnit, dayOrder },
        }),
      )
      const checked = await this.#command('imports/check', { batchId, version: draft.version, columns })
      const applied = await this.#command('imports/apply', { batchId, version: checked?.json.version })
      this.done.imports.push({ batchId, prefix, rows: ROWS, acknowledged: applied?.status === 200 })
      // The next one when this one is there, or the queue would only grow.
      while (!this.#ended && (await this.#read('imports/batch', { batchId })).state !== 'applied') await sleep(500)
    }
  }

  async #refit(): Promise<void> {
    while (!this.#ended) {
      if ((await this.#command('forecasts/checkAgain', {}))?.status === 200) this.done.refits++
      await sleep(6000)
    }
  }

  /** Nobody is at home anywhere: the job goes back to those that wait, and a later plan books it again. */
  async #closeOut(): Promise<void> {
    while (!this.#ended) {
      const {
        visits = [],
        next = [],
        day,
      } = (await this.#read('visits/today', {})) as Partial<Record<'visits' | 'next', Line[]>> & {
        day?: string
      }
      const open = [...visits, ...next].find(({ state }) => state === 'booked' || state === 'under-way')
      if (open) {
        const { visitId, kind } = open
        const now = new Date().toISOString()
        const nothing = { checks: [], measurements: [], partsUsed: [], oldBed: null, newBed: null, hardnessReason: '', notes: '' }
        const facts = { visitId, jobKind: kind, outcome: 'no-access', workDay: day, startedAt: now, finishedAt: now }
        const answer = await this.#command('visits/closeOut', { record: { ...facts, ...nothing, reason: 'nobody was at home' } })
        if (answer?.status === 200) this.done.closed.push(visitId)
        else if (answer) this.done.refused.push(`visits/closeOut ${answer.status}`)
      }
      await sleep(1500)
    }
  }

  async #plan(): Promise<void> {
    while (!this.#ended) {
      const fromDay = new Date(Date.now() + 86_400_000).toISOString().slice(0, 10)
      const planId = (await this.#command('plans/start', { fromDay, days: 2, asked: { kind: 'week' } }))?.json.planId as string | undefined
      let plan: Record<string, unknown> = {}
      for (let looks = 0; planId && looks < 120 && !this.#ended; looks++) {
        plan = await this.#read('plans/get', { planId })
        if (plan.state !== 'running') break
        await sleep(500)
      }
      if (planId && plan.state === 'ready') {
        const differenceIds = ((plan.differences ?? []) as { id: string }[]).map(({ id }) => id)
        const answer = differenceIds.length
          ? await this.#command('plans/accept', { planId, version: plan.version, differenceIds })
          : undefined
        if (answer?.status === 200) this.done.accepted.push(planId)
        else if (answer) this.done.refused.push(`plans/accept ${answer.status}`)
      }
      await sleep(1000)
    }
  }

  begin(): void {
    this.#loops = [this.#addSupplies(), this.#import(), this.#refit(), this.#closeOut(), this.#plan()]
  }

  async end(): Promise<void> {
    this.#ended = true
    await Promise.all(this.#loops)
  }
}
