'use client'
import type { CrewPerson } from '@almanac/contract/crews'
import { Button } from '@almanac/ui/button'
import { TimeInput } from '@almanac/ui/time-input'
import { readAmount } from '@almanac/units/read-amount'
import { useState } from 'react'
import { AmountField } from '@/client/amount-field'
import { type AmountText, settled } from '@/client/amounts'
import { useLocale } from '@/client/use-locale'

type Breaks = CrewPerson['breaks']
type TypedBreak = { from: string; until: string; lasts: AmountText }

const MOST = 4
const minutesText = (minutes: number): AmountText => ({ text: String(minutes), unit: 'min', why: '' })

/** Breaks being typed. `read` gives them, or null while one of them is no time: its field then says why. */
export function useBreaks(start: Breaks) {
  const locale = useLocale()
  const [tried, setTried] = useState(false)
  const [typed, setTyped] = useState<TypedBreak[]>(() =>
    start.map(({ from, until, minutes }) => ({ from, until, lasts: minutesText(minutes) })),
  )
  const read = (): Breaks | null => {
    setTried(true)
    const breaks = typed.flatMap(({ from, until, lasts }) => {
      const amount = settled(readAmount('breakMinutes', lasts.text, { locale }), '')
      return amount ? [{ from, until, minutes: amount.value }] : []
    })
    return breaks.length === typed.length ? breaks : null
  }
  return { typed, setTyped, tried, read }
}

/** Breaks: so many minutes, begun at some time of a span. */
export function BreakFields({ form }: { form: ReturnType<typeof useBreaks> }) {
  const { typed, setTyped, tried } = form
  const set = (at: number, part: Partial<TypedBreak>) => setTyped((all) => all.map((one, n) => (n === at ? { ...one, ...part } : one)))
  return (
    <fieldset className="flex flex-col gap-3">
      <legend className="mb-1 font-medium">Breaks</legend>
      {typed.map((one, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a break has nothing else to be known by, and its place does not change while it is typed.
        <div key={n} className="flex flex-wrap items-end gap-2">
          <AmountField
            label="Length"
            kind="breakMinutes"
            required
            tried={tried}
            value={one.lasts}
            onChange={(lasts) => set(n, { lasts })}
          />
          <TimeInput label="Starts at the earliest" required value={one.from} onChange={(event) => set(n, { from: event.target.value })} />
          <TimeInput label="at the latest" required value={one.until} onChange={(event) => set(n, { until: event.target.value })} />
          <Button kind="quiet" onClick={() => setTyped((all) => all.filter((_, other) => other !== n))}>
            Leave out
          </Button>
        </div>
      ))}
      {typed.length < MOST ? (
        <div>
          <Button onClick={() => setTyped((all) => [...all, { from: '11:30', until: '13:00', lasts: minutesText(30) }])}>
            Add a break
          </Button>
        </div>
      ) : null}
    </fieldset>
  )
}
