import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import { afterSending, toSend } from '@almanac/service-rules/field/outbox'
import { noAccess, type Person, type Sending, TestTablet } from './field-queue.ts'

/** Numbers from a seed (mulberry32, public domain), from 0 up to 1. */
function randomFrom(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = Math.imul(a ^ (a >>> 15), a | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

type State = 'booked' | 'under-way' | 'closed' | 'called-off'
/** What the promises say of a visit, one thing after the other: written from docs/field-protocol.md, not from the code. */
type Model = Map<string, State>
const DAY = '2026-12-03'

/** What a command makes of the model, and whether it is taken. */
function expected(model: Model, kind: string, visitId: string): 'taken' | 'set-aside' {
  const state = model.get(visitId)
  if (kind === 'start') {
    if (state === 'called-off') return 'set-aside'
    if (state === 'booked') model.set(visitId, 'under-way')
    return 'taken'
  }
  if (kind === 'undo-start') {
    if (state === 'under-way') model.set(visitId, 'booked')
    return state === 'under-way' || state === 'booked' ? 'taken' : 'set-aside'
  }
  if (state === 'closed') return 'set-aside'
  model.set(visitId, 'closed')
  return 'taken'
}

/** Three visits of a site, each of a job of its own, and a part of which each close-out uses one. */
async function makeVisits(firm: Person & { siteId: string; crewDayId: string }): Promise<string[]> {
  const { companyId, siteId, crewDayId } = firm
  const span = { startsAt: new Date(`${DAY}T16:00:00Z`), endsAt: new Date(`${DAY}T17:00:00Z`) }
  return inCompany(firm, async (tx) => {
    const ids: string[] = []
    for (let i = 0; i < 3; i++) {
      const job = { companyId, id: newId(), siteId, kind: 'inspection', state: 'booked', minutes: 60, crewSize: 1 }
      await tx.job.create({ data: { ...job, createdAt: dateOf('2026-11-02') } })
      const visit = { companyId, id: newId(), jobId: job.id, crewDayId, state: 'booked', ...span }
      await tx.visit.create({ data: visit })
      ids.push(visit.id)
    }
    return ids
  })
}

/** The dispatcher takes a visit off, as far as it has not begun. */
const callOff = (firm: Person, visitId: string) =>
  inCompany(firm, async (tx) => {
    const visit = await tx.visit.findFirstOrThrow({ where: { id: visitId } })
    await tx.visit.update({ where: { companyId_id: { companyId: firm.companyId, id: visitId } }, data: { state: 'called-off' } })
    await tx.job.updateMany({ where: { id: visit.jobId }, data: { state: 'proposed' } })
  })

/** What came out of a run against what the model says, as sentences; none where all agree. */
async function differences(firm: Person, model: Model, results: Map<string, string>, tablet: TestTablet): Promise<string[]> {
  const ids = [...model.keys()]
  const { visits, applied, aside, closings } = await inCompany(firm, async (tx) => ({
    visits: await tx.visit.findMany({ where: { id: { in: ids } } }),
    applied: await tx.appliedCommand.findMany({ where: { queueId: tablet.outbox.queueId }, orderBy: { sequence: 'asc' } }),
    aside: await tx.setAside.findMany({ where: { queueId: tablet.outbox.queueId } }),
    closings: await tx.auditEntry.findMany({ where: { entityId: { in: ids }, operation: 'jobs.take-field-command: closed out' } }),
  }))
  const refused = [...results].filter(([, result]) => result === 'set-aside').map(([id]) => id)
  const kept = aside.filter((one) => one.kind === 'refused')
  const closed = ids.filter((id) => model.get(id) === 'closed')
  return [
    ...visits.filter((one) => one.state !== model.get(one.id)).map((one) => `visit ${one.id} is ${one.state}, not ${model.get(one.id)}`),
    ...(tablet.outbox.waiting.length > 0 ? ['something still waits on the tablet'] : []),
    ...(applied.length === results.size && applied.every((one, at) => one.sequence === at + 1)
      ? []
      : ['not every number was applied once']),
    ...applied.flatMap((one) => {
      const { result } = one.answer as { result: string }
      return result === results.get(one.id) ? [] : [`number ${one.sequence} was ${result}, not ${results.get(one.id)}`]
    }),
    ...(closings.length === closed.length && new Set(closings.map((one) => one.entityId)).size === closings.length
      ? []
      : ['a visit was closed twice, or not at all']),
    ...(kept.length === refused.length &&
    refused.every((id) => kept.some((one) => one.commandId === id && Object.keys(one.content as object).length > 0))
      ? []
      : ['a refusal is not in the office with its content']),
    ...(tablet.outbox.told.length === refused.length ? [] : ['a refusal was not told on the tablet']),
  ]
}

/** What may happen to a request between tablet and server. */
const FATES = ['arrives', 'arrives', 'request lost', 'answer lost', 'twice', 'killed after sending', 'an old one again'] as const

/**
 * One run: a tablet that writes down a dozen commands at random for three visits, under a network that loses requests and answers, doubles them and brings old ones
 * again, with the tablet ended in between and the dispatcher calling visits off meanwhile; at the end all is sent. Answers what differs from the promises.
 */
export async function fieldFaultRun(firm: Person & { siteId: string; crewDayId: string }, seed: number): Promise<string[]> {
  const random = randomFrom(seed)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T
  const visits = await makeVisits(firm)
  const model: Model = new Map(visits.map((id) => [id, 'booked']))
  const results = new Map<string, string>()
  const tablet = new TestTablet(firm)
  const old: Sending[] = []
  /** What reaches the server: judged by the model at its first coming. */
  const reach = async (one: Sending) => {
    const answer = await tablet.ask(one)
    if (answer.result === 'send-first') return answer
    if (!results.has(one.commandId))
      results.set(one.commandId, expected(model, one.kind, String((one.body.record as { visitId?: string })?.visitId ?? one.body.visitId)))
    old.push(one)
    return answer
  }
  const sendOnce = async (fate: (typeof FATES)[number]) => {
    const next = toSend(tablet.outbox)
    if (!next) return
    if (fate === 'an old one again' && old.length > 0) await tablet.ask(pick(old))
    if (fate === 'request lost') tablet.outbox = afterSending(tablet.outbox, next, { result: 'failed', code: 'unreachable' })
    else {
      const [answer] = fate === 'twice' ? await Promise.all([reach(next), tablet.ask(next)]) : [await reach(next)]
      // What the tablet did not hear, or was ended before it could write down, it sends again.
      if (fate === 'answer lost') tablet.outbox = afterSending(tablet.outbox, next, { result: 'failed', code: 'unreachable' })
      else if (fate !== 'killed after sending') tablet.outbox = afterSending(tablet.outbox, next, answer)
    }
  }
  for (let turn = 0; turn < 16; turn++) {
    const what = random()
    const visitId = pick(visits)
    if (what < 0.4) {
      const kind = pick(['start', 'undo-start', 'close-out'])
      tablet.write(kind, kind === 'close-out' ? { record: noAccess(visitId, 'inspection', DAY) } : { visitId })
    } else if (what < 0.5) {
      if (model.get(visitId) === 'booked') {
        await callOff(firm, visitId)
        model.set(visitId, 'called-off')
      }
    } else await sendOnce(pick(FATES))
  }
  while (toSend(tablet.outbox)) await sendOnce('arrives')
  return (await differences(firm, model, results, tablet)).map((sentence) => `seed ${seed}: ${sentence}`)
}
