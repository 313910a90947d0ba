import { type CallComplaint, callComplaints } from './call.ts'
import { oneOf } from './choices.ts'
import { type ProcedureStepId, procedureSteps } from './procedure-step.ts'
import { type VisitStop, visitStops } from './visit-stop.ts'

/**
 * How a job was asked for, as the app wrote it down itself: by the link in a reminder, with the days that suit as the customer typed them; or on a call, a look and a
 * quote, a complaint after a rebed, what the caller sees, since when their water is hard; or by the link of an owner who rebeds alone, with the step they stopped at, the answer that
 * ended it, what they measured and how many photographs they sent; or as a kit for such an owner. Days are ISO. Screens find the words; what people say in their own is the note.
 */
export type AskedFor =
  | { by: 'link'; days: string }
  | {
      by: 'call'
      quote: boolean
      rebedDay: string | null
      sees: CallComplaint | null
      hard: { earliest: string; latest: string } | null
    }
  | AskedByGuide
  | { by: 'kit'; way: KitWay }

export const kitWays = ['collected', 'shipped'] as const
export type KitWay = (typeof kitWays)[number]

export type AskedByGuide = {
  by: 'guide'
  step: ProcedureStepId | null
  stop: VisitStop | null
  aroundIn: number | null
  heightIn: number | null
  photographs: number
}

type Kept = {
  by?: unknown
  days?: unknown
  quote?: unknown
  rebedDay?: unknown
  sees?: unknown
  hard?: { earliest?: unknown; latest?: unknown } | null
} & Partial<Record<'step' | 'stop' | 'aroundIn' | 'heightIn' | 'photographs' | 'way', unknown>>

const number = (value: unknown): number | null => (typeof value === 'number' && Number.isFinite(value) ? value : null)
const text = (value: unknown): string | null => (typeof value === 'string' ? value : null)

const byGuide = ({ step, stop, aroundIn, heightIn, photographs }: Kept): Omit<AskedByGuide, 'by'> => ({
  ...{ step: oneOf(procedureSteps, text(step) ?? ''), stop: oneOf(visitStops, text(stop) ?? '') },
  ...{ aroundIn: number(aroundIn), heightIn: number(heightIn), photographs: number(photographs) ?? 0 },
})

/** What is kept of it; null where nothing is, or by a release that keeps it otherwise. */
export function askedFor(json: unknown): AskedFor | null {
  const kept = (json ?? {}) as Kept
  const { by, days, quote, rebedDay, sees, hard } = kept
  if (by === 'link') return { by, days: text(days) ?? '' }
  if (by === 'guide') return { by, ...byGuide(kept) }
  if (by === 'kit') return { by, way: oneOf(kitWays, text(kept.way) ?? '') ?? 'collected' }
  if (by !== 'call') return null
  const [earliest, latest] = [text(hard?.earliest), text(hard?.latest)]
  return {
    ...{ by, quote: quote === true, rebedDay: text(rebedDay), sees: oneOf(callComplaints, text(sees) ?? '') },
    hard: earliest && latest ? { earliest, latest } : null,
  }
}
