import type { FieldAnswer } from '@almanac/contract/field'
import type { CloseOutInput } from '@almanac/contract/visits'
import { takeFieldCommand } from '@almanac/operations/jobs/take-field-command'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { afterSending, emptyOutbox, enqueue, type Outbox, toSend, type Waiting } from '@almanac/service-rules/field/outbox'

export type Person = { companyId: string; personId: string }
export type Sending = Waiting & { oldest: number }

/** A close-out that asks nothing of the record: nobody opened the door. */
export const noAccess = (visitId: string, jobKind: CloseOutInput['jobKind'], day: string): CloseOutInput => ({
  ...{ visitId, jobKind, outcome: 'no-access', workDay: day, checks: [], measurements: [], partsUsed: [], oldBed: null, newBed: null },
  ...{ startedAt: `${day}T16:00:00.000Z`, finishedAt: `${day}T16:20:00.000Z` },
  ...{ reason: 'nobody was at home', hardnessReason: '', notes: '' },
})

/** A tablet's queue as the app keeps it, over the operation itself: what lies between them is the test's. */
export class TestTablet {
  outbox: Outbox = emptyOutbox(newId())
  readonly person: Person

  constructor(person: Person) {
    this.person = person
  }

  write(kind: string, body: Record<string, unknown>, form = 1): Waiting {
    const made = {
      commandId: newId(),
      form,
      kind,
      madeAt: now().toISOString(),
      body,
      visitId: String(body.visitId),
      siteLabel: 'Orchard Lane 14',
    }
    this.outbox = enqueue(this.outbox, made)
    return this.outbox.waiting.at(-1) as Waiting
  }

  /** What the server answers; the tablet doesn't hear it. */
  ask({ visitId: _, siteLabel: __, ...command }: Sending, sentAt = now().toISOString()): Promise<FieldAnswer> {
    return takeFieldCommand(this.person, { ...command, queueId: this.outbox.queueId, sentAt, body: { ...command.body } })
  }

  /** Sends the next one; answers null where nothing is to be sent. */
  async send(): Promise<FieldAnswer | null> {
    const next = toSend(this.outbox)
    if (!next) return null
    try {
      const answer = await this.ask(next)
      this.outbox = afterSending(this.outbox, next, answer)
      return answer
    } catch (error) {
      this.outbox = afterSending(this.outbox, next, { result: 'failed', code: error instanceof AppError ? error.code : 'unexpected' })
      throw error
    }
  }

  async sendAll(): Promise<string[]> {
    const results: string[] = []
    for (let answer = await this.send(); answer; answer = await this.send()) results.push(answer.result)
    return results
  }
}
