'use client'
import { Button } from '@almanac/ui/button'
import { formatDuration } from '@almanac/units/format-clock'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useState } from 'react'
import { useSession } from '@/client/providers'

type Props = {
  minutes: number
  /** When it was started, kept with the entries: it runs on while the page is away. Null while it does not run. */
  startedAt: string | null
  onStart: () => void
  onStop: () => void
}

const twoDigits = (value: number) => String(value).padStart(2, '0')

/** What is left of a time to wait at a step, and that it is up. */
export function StepTimer({ minutes, startedAt, onStart, onStop }: Props) {
  const { me } = useSession()
  const words = useWords('visit')
  const [now, setNow] = useState(() => Date.now())
  useEffect(() => {
    if (startedAt === null) return
    setNow(Date.now())
    const tick = setInterval(() => setNow(Date.now()), 1000)
    return () => clearInterval(tick)
  }, [startedAt])
  const whole = formatDuration(minutes, me.company)
  // A clock set back meanwhile makes it no longer than it is.
  const left = startedAt === null ? 0 : Math.min(minutes * 60, Math.ceil(minutes * 60 - (now - Date.parse(startedAt)) / 1000))
  const up = startedAt !== null && left <= 0
  useEffect(() => {
    if (up) navigator.vibrate?.(400)
  }, [up])
  return (
    <div className="my-5 flex min-h-16 flex-wrap items-center justify-between gap-3 border border-edge px-4 py-2">
      {startedAt === null ? (
        <span>{words('timer', { time: whole })}</span>
      ) : up ? (
        <output className="font-semibold">{words('timeUp', { time: whole })}</output>
      ) : (
        <span role="timer">
          <strong className="text-h1 font-semibold">{`${Math.floor(left / 60)}:${twoDigits(left % 60)}`}</strong>{' '}
          {words('timeLeft', { time: whole })}
        </span>
      )}
      <Button onClick={startedAt === null ? onStart : onStop}>{words(startedAt === null ? 'timerStart' : 'timerStop')}</Button>
    </div>
  )
}
