import type { WorkLine } from '@almanac/contract/visits'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { Outbox, Waiting } from '@almanac/service-rules/field/outbox'
import type { Lately } from './field-home.tsx'

type Shown = Pick<WorkLine, 'visitId' | 'state'> & { outcome?: VisitOutcome | null }

/** What a command makes of a visit on the tablet's own pages. */
function done<V extends Shown>(visit: V, { kind, body }: Waiting): V {
  if (kind === 'start') return visit.state === 'booked' ? { ...visit, state: 'under-way' } : visit
  if (kind === 'undo-start') return visit.state === 'under-way' ? { ...visit, state: 'booked' } : visit
  if (kind !== 'close-out') return visit
  const { outcome } = body.record as { outcome: VisitOutcome }
  return { ...visit, state: 'closed', ...('outcome' in visit ? { outcome } : {}) }
}

/** A visit as it stands on this device: as the server said at `asOf`, with what was done here and the server doesn't know yet, or took since. */
export function asDone<V extends Shown>(visit: V, outbox: Outbox | null, lately: readonly Lately[], asOf: number): V {
  const since = lately.filter((one) => one.at > asOf).map((one) => one.command)
  return [...since, ...(outbox?.waiting ?? [])].filter((one) => one.visitId === visit.visitId).reduce(done, visit)
}

/** Whether a close-out of this visit waits on this device to be sent. */
export const closeOutWaits = (visitId: string, outbox: Outbox | null): boolean =>
  outbox?.waiting.some((one) => one.visitId === visitId && one.kind === 'close-out') ?? false
