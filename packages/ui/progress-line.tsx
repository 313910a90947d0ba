'use client'
import { formatPercent } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useId } from 'react'
import { Button } from './button.tsx'
import { useDisplay } from './display.tsx'

export type ProgressLineProps = {
  /** What is being done: "Reading rows". */
  label: ReactNode
  /** How much is done; leave it out while nobody knows. */
  value?: number
  max?: number
  /** In words: "12,400 of 20,000 rows, about 20 s left". */
  detail?: ReactNode
  onStop?: () => void
  stopLabel?: string
}

/** The progress of long work, which can be stopped. */
export function ProgressLine({ label, value, max = 1, detail, onStop, stopLabel }: ProgressLineProps) {
  const display = useDisplay()
  const words = useWords('common')
  const id = useId()
  const share = value === undefined ? undefined : Math.min(1, Math.max(0, max > 0 ? value / max : 0))
  return (
    <div className="my-4 flex max-w-2xl flex-wrap items-end gap-x-5 gap-y-2">
      <div className="grow basis-72">
        <div className="mb-1.5 flex flex-wrap justify-between gap-x-4">
          <span id={id} className="font-medium">
            {label}
          </span>
          <span className="text-soft">{detail ?? (share === undefined ? '' : formatPercent(Math.floor(share * 100) / 100, display))}</span>
        </div>
        <progress aria-labelledby={id} value={share} max={1} className="sr-only" />
        <div aria-hidden="true" className="h-2 bg-line">
          <div
            className={`h-full bg-ink transition-[width] ${share === undefined ? 'w-1/4 animate-pulse motion-reduce:animate-none' : ''}`}
            style={share === undefined ? undefined : { width: `${share * 100}%` }}
          />
        </div>
      </div>
      {onStop ? <Button onClick={onStop}>{stopLabel ?? words('stop')}</Button> : null}
    </div>
  )
}
