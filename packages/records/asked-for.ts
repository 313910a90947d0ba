import { type CallComplaint, callComplaints } from './call.ts'
import { oneOf } from './choices.ts'

/**
 * How a job was asked for, as the app wrote it down itself: by the link in a reminder, with the days that suit as the customer typed them; or on a call, a look and a
 * quote, a complaint after a rebed, what the caller sees, since when their water is hard. Days are ISO. Screens find the words; what people say in their own is the note.
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

type Kept = {
  by?: unknown
  days?: unknown
  quote?: unknown
  rebedDay?: unknown
  sees?: unknown
  hard?: { earliest?: unknown; latest?: unknown } | null
}

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null)

/** What is kept of it; null where nothing is, or by a release that keeps it otherwise. */
export function askedFor(json: unknown): AskedFor | null {
  const { by, days, quote, rebedDay, sees, hard } = (json ?? {}) as Kept
  if (by === 'link') return { by, days: text(days) ?? '' }
  if (by !== 'call') return null
  const [earliest, latest] = [text(hard?.earliest), text(hard?.latest)]
  return {
    ...{ by, quote: quote === true, rebedDay: text(rebedDay), sees: oneOf(callComplaints, text(sees) ?? '') },
    hard: earliest && latest ? { earliest, latest } : null,
  }
}
