import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import { useSearchParams } from 'next/navigation'
import { useToday } from './use-today.ts'

/** The day that stands in the page's address; today where none does, or what stands there is none. */
export function useAskedDay(): { day: string; today: string } {
  const today = useToday()
  const asked = useSearchParams().get('day') ?? ''
  return { day: isIsoDay(asked) ? asked : today, today }
}
