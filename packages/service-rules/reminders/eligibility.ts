import type { Channel } from '@almanac/records/channel'
import { isOpenJob, type JobState } from '@almanac/records/job-state'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { type DayDisplay, formatDay, formatDays } from '@almanac/units/format-day'
import { chooseContact, type ReminderContact } from './choose-contact.ts'

export type ReminderNotice = 'due-window'

export interface ReminderBed {
  bedId: string
  /** False once the bed has ended. */
  inService: boolean
  /** ISO days; null where no forecast could be made. */
  dueWindow: { earlyDay: string; lateDay: string } | null
}

export interface ReminderSettings {
  /** How many days before the early day the customer hears of it. */
  leadDays: number
  /** Channels the firm uses, the preferred one first. */
  channels: Channel[]
}

export type ReminderDecision =
  | { due: true; notice: ReminderNotice; key: string; contactId: string; channel: Channel; sentence: string }
  | { due: false; reason: string }

/** One bed and one notice have one key for ever, so that a window that moves each night never makes a second reminder. */
function reminderKey(bedId: string, notice: ReminderNotice): string {
  return `${bedId}:${notice}`
}

/**
 * Whether a bed's reminder is due today, and to whom on which channel.
 *
 * @param job the bed's own job or one that would rebed it, open or not; null where there is none
 * @param today ISO day in the company's zone
 * @param display how its sentences write days
 */
export function reminderFor(
  bed: ReminderBed,
  job: { state: JobState } | null,
  contacts: readonly ReminderContact[],
  settings: ReminderSettings,
  today: string,
  display: DayDisplay,
): ReminderDecision {
  if (!bed.inService) return { due: false, reason: 'This bed is no longer in service.' }
  if (job && isOpenJob(job.state)) return { due: false, reason: jobReason[job.state] }
  if (!bed.dueWindow) return { due: false, reason: 'There’s no due window, because we couldn’t forecast this bed.' }
  const fromDay = addDays(bed.dueWindow.earlyDay, -settings.leadDays)
  if (today < fromDay) return { due: false, reason: `Not yet: the reminder is due from ${formatDay(fromDay, display)}.` }
  const { earlyDay, lateDay } = bed.dueWindow
  const chosen = chooseContact(contacts, settings.channels)
  if (!chosen.ok) return { due: false, reason: chosen.reason }
  return {
    due: true,
    notice: 'due-window',
    key: reminderKey(bed.bedId, 'due-window'),
    contactId: chosen.contactId,
    channel: chosen.channel,
    sentence: `The rebed is due ${formatDays(earlyDay, lateDay, display)}. ${chosen.sentence}`,
  }
}

const jobReason: Record<JobState, string> = {
  proposed: 'There’s already a proposed job for this bed.',
  booked: 'The job for this bed is already booked.',
  'under-way': 'A crew is working on this bed.',
  held: 'The job for this bed is on hold. Take it off hold or call it off first.',
  closed: 'The job for this bed is closed.',
  'called-off': 'The job for this bed was called off.',
}
