'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { Button } from '@almanac/ui/button'
import { NumberInput } from '@almanac/ui/number-input'
import { TimeInput } from '@almanac/ui/time-input'

type Breaks = CrewPerson['breaks']

const MOST = 4

/** Breaks: so many minutes, begun at some time of a span. */
export function BreakFields({ breaks, onChange }: { breaks: Breaks; onChange: (breaks: Breaks) => void }) {
  const set = (at: number, part: Partial<Breaks[number]>) => onChange(breaks.map((one, n) => (n === at ? { ...one, ...part } : one)))
  return (
    <fieldset className="flex flex-col gap-3">
      <legend className="mb-1 font-medium">Breaks</legend>
      {breaks.map((one, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a break has nothing else to be known by, and its place does not change while it is typed.
        <div key={n} className="flex flex-wrap items-end gap-2">
          <NumberInput
            label="Lasts"
            unit="min"
            value={String(one.minutes)}
            onChange={(event) => set(n, { minutes: Number(event.target.value.replace(/\D/g, '')) })}
          />
          <TimeInput label="Begins from" required value={one.from} onChange={(event) => set(n, { from: event.target.value })} />
          <TimeInput label="at the latest" required value={one.until} onChange={(event) => set(n, { until: event.target.value })} />
          <Button kind="quiet" onClick={() => onChange(breaks.filter((_, other) => other !== n))}>
            Leave out
          </Button>
        </div>
      ))}
      {breaks.length < MOST ? (
        <div>
          <Button onClick={() => onChange([...breaks, { from: '11:30', until: '13:00', minutes: 30 }])}>Add a break</Button>
        </div>
      ) : null}
    </fieldset>
  )
}
