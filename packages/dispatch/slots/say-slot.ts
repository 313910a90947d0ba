import { percentInSentence } from '@almanac/units/format-number'
import { sayDay, sayList, sayMinutes, sayTime } from '../propose/say.ts'
import type { Slot } from './slot.ts'

/** A slot in one sentence: when, with whom, and what it costs the day. */
export function saySlot(slot: Omit<Slot, 'sentence'>, label: string): string {
  const facts: string[] = []
  if (slot.addedDriveMinutes === null) facts.push('drive unknown')
  else if (Math.round(slot.addedDriveMinutes) <= 0) facts.push('no more driving')
  else facts.push(`${sayMinutes(slot.addedDriveMinutes)} more driving`)
  if (slot.addedOvertimeMinutes >= 1) facts.push(`${sayMinutes(slot.addedOvertimeMinutes)} overtime`)
  if (slot.addedWaitMinutes >= 10) facts.push(`${sayMinutes(slot.addedWaitMinutes)} waiting`)
  if (slot.lateDays > 0) facts.push(`${slot.lateDays} ${slot.lateDays === 1 ? 'day' : 'days'} after it is due`)
  if (slot.windowSlackMinutes < 15) facts.push('close to the end of the window')
  if (slot.fullest > 0.9) facts.push(`vehicle ${percentInSentence(slot.fullest)} full`)
  return `${sayDay(slot.date)}, ${sayTime(slot.startMinute)}–${sayTime(slot.endMinute)}, ${label}: ${sayList(facts)}.`
}
