'use client'
import { useWords } from '@almanac/words/use-words'
import { type PointerEvent, type ReactNode, useState } from 'react'

export type PlotReaderProps = {
  /** What one reads along: "Read the curve day by day". */
  label: string
  /** Where each point stands across the plot, in pixels from its left edge, rising. */
  at: readonly number[]
  /** A point's figures in words; spoken, and shown over the plot. */
  words: (index: number) => string
  /** Index to begin at. */
  first?: number
  height: number
  children: (index: number | null) => ReactNode
}

/**
 * Lets a plot be read point by point with mouse, finger or keyboard. Under the plot's picture lies a native slider: one stop for the Tab
 * key, arrows go from point to point, and screen readers speak each point's words.
 */
export function PlotReader({ label, at, words, first = 0, height, children }: PlotReaderProps) {
  const [index, setIndex] = useState(Math.min(first, Math.max(0, at.length - 1)))
  const [reading, setReading] = useState(false)
  const say = useWords('common')
  const nearest = (event: PointerEvent<HTMLElement>) => {
    const x = event.clientX - event.currentTarget.getBoundingClientRect().left
    let best = 0
    at.forEach((p, i) => {
      if (Math.abs(p - x) < Math.abs((at[best] ?? 0) - x)) best = i
    })
    setIndex(best)
    setReading(true)
  }
  return (
    <div
      className="relative touch-pan-y has-focus-visible:outline-2 has-focus-visible:outline-ink"
      onPointerMove={nearest}
      onPointerDown={nearest}
    >
      {children(reading ? index : null)}
      <input
        type="range"
        aria-label={label}
        aria-valuetext={words(index)}
        min={0}
        max={Math.max(0, at.length - 1)}
        step={1}
        value={index}
        onChange={(event) => {
          setIndex(Number(event.target.value))
          setReading(true)
        }}
        onFocus={() => setReading(true)}
        onBlur={() => setReading(false)}
        className="pointer-events-none absolute inset-x-0 top-0 m-0 w-full opacity-0"
        style={{ height }}
      />
      <p aria-hidden="true" className="min-h-[1.5em] text-small print:hidden">
        {reading ? words(index) : <span className="text-soft">{say('readPlot')}</span>}
      </p>
    </div>
  )
}
