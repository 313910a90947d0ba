import { formatDuration } from '@almanac/units/format-clock'
import { formatPercent } from '@almanac/units/format-number'
import { type Saying, sayDay, sayList, sayTimes } from '../propose/say.ts'
import type { Slot } from './slot.ts'

/** A slot in one sentence: when, with whom, and what it costs the day. */
export function saySlot(slot: Omit<Slot, 'sentence'>, label: string, saying: Saying): string {
  const facts: string[] = []
  if (slot.addedDriveMinutes === null) facts.push('drive unknown')
  else if (Math.round(slot.addedDriveMinutes) <= 0) facts.push('no extra driving')
  else facts.push(`${formatDuration(slot.addedDriveMinutes, saying)} more driving`)
  if (slot.addedOvertimeMinutes >= 1) facts.push(`${formatDuration(slot.addedOvertimeMinutes, saying)} overtime`)
  if (slot.addedWaitMinutes >= 10) facts.push(`${formatDuration(slot.addedWaitMinutes, saying)} waiting`)
  if (slot.lateDays > 0) facts.push(`${slot.lateDays} ${slot.lateDays === 1 ? 'day' : 'days'} after it is due`)
  if (slot.windowSlackMinutes < 15) facts.push('close to the end of the window')
  if (slot.fullest > 0.9) facts.push(`vehicle ${formatPercent(slot.fullest, saying)} full`)
  return `${sayDay(slot.date, saying)}, ${sayTimes(slot.startMinute, slot.endMinute, saying)}, ${label}: ${sayList(facts)}.`
}
