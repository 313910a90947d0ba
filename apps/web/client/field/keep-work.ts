import { addDays } from '@almanac/units/calendar/calendar-day'
import type { Api } from '../api.ts'
import { readFailure } from '../failure.ts'
import { keep, type Owner } from './field-store.ts'

/** Under which name an answer is kept. */
export const TODAY = 'today'
export const visitName = (visitId: string) => `visit ${visitId}`

let under: Promise<void> | undefined

async function fetchWork(api: Api, owner: Owner): Promise<void> {
  const today = await api.visits.today.call({})
  await keep(owner, TODAY, today)
  const tomorrow = addDays(today.day, 1)
  const ahead = [...today.visits, ...today.next.filter((visit) => visit.day === tomorrow)].filter((visit) => visit.state !== 'closed')
  // One after the other: a weak signal carries one better than ten. One that the server refuses does not keep the rest away.
  for (const { visitId } of ahead) {
    const visit = await api.visits.get.call({ visitId }).catch((error: unknown) => {
      if (readFailure(error).code === 'unavailable') throw error
      return null
    })
    if (visit) await keep(owner, visitName(visitId), visit)
  }
}

/** Brings the work of today and tomorrow onto this device, each visit with all that it needs. Without a connection what was kept stays. */
export function keepWork(api: Api, owner: Owner): Promise<void> {
  under ??= fetchWork(api, owner)
    .catch(() => {})
    .finally(() => {
      under = undefined
    })
  return under
}
