import type { CallBackRow, CallRow } from '@almanac/contract/calls'
import { callComplaintWords, callFollowUpWords } from '@almanac/records/call'
import { jobKindWords } from '@almanac/records/job-kind'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { Display } from '@almanac/units/display'
import { formatClocks } from '@almanac/units/format-clock'
import { formatDays, formatNearDay } from '@almanac/units/format-day'

/** "Today", "Overdue since Fri, Nov 27", "Tue, Dec 8". */
export function dueWord(dueDay: string, today: string, display: Display): string {
  if (dueDay === today) return 'Today'
  return dueDay < today ? `Overdue since ${formatNearDay(dueDay, display)}` : formatNearDay(dueDay, display)
}

/** "Thu, Dec 3, 8:00 AM – 12:00 PM". */
const promisedWords = ({ from, until }: { from: string; until: string }, display: Display): string =>
  `${formatNearDay(dayIn(display.timeZone, from), display)}, ${formatClocks(from, until, display)}`

/** What a call-back is about, and what to say. */
export function aboutWords({ cause, promised, sees, words, note, job }: CallBackRow, display: Display): string {
  const said = [sees && callComplaintWords[sees], words].filter(Boolean).join('. ')
  const kind = job ? jobKindWords[job.kind].toLowerCase() : 'visit'
  if (cause === 'promise' && promised)
    return [
      `We promised the ${kind} for ${promisedWords(promised, display)}, and it’s no longer booked then. Apologize and agree a new time.`,
      note,
    ]
      .filter(Boolean)
      .join(' ')
  if (cause === 'missed') return [`We did not come for the ${kind}. Apologize and agree a new time.`, note].filter(Boolean).join(' ')
  return [said, note].filter(Boolean).join(' ') || (cause === 'quote' ? 'Give them the quote.' : 'They asked to be called.')
}

/** What was said in a call, and what followed. */
export function saidWords(call: CallRow, display: Display): string {
  const { sees, words, advised, stillSoft, hardSinceDay, hardSinceLatest } = call
  return [
    sees && callComplaintWords[sees],
    stillSoft && 'Water still soft',
    hardSinceDay && `Hard since about ${formatDays(hardSinceDay, hardSinceLatest ?? hardSinceDay, display)}`,
    words,
    advised && `Advised: ${advised}`,
  ]
    .filter(Boolean)
    .join('. ')
}

/** "Repair", "Call back", "Nothing more". */
export const followedWords = ({ job, follows }: CallRow): string => (job ? jobKindWords[job.kind] : callFollowUpWords[follows])
