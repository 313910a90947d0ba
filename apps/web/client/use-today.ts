'use client'
import { useState, useSyncExternalStore } from 'react'
import { dayNow, watchClock } from './day-clock.ts'
import { useSession } from './providers.tsx'

const watch = (tell: () => void) => watchClock(tell)

/** Today in the company's zone, 'YYYY-MM-DD', by this device's clock: on a page left open overnight it goes on at midnight. */
export function useToday(): string {
  const { me, pageDay } = useSession()
  return useSyncExternalStore(
    watch,
    () => dayNow(me.company.timeZone),
    () => pageDay,
  )
}

/** A day being asked for that begins as today. Until somebody sets it, it goes on with the clock; an emptied one stays empty. */
export function useDayField() {
  const today = useToday()
  const [typed, setTyped] = useState<string | null>(null)
  const day = typed ?? today
  return { day, today, field: { value: day, onChange: (event: { target: { value: string } }) => setTyped(event.target.value) } }
}
