'use client'
import type { Rounds } from '@almanac/contract/agreements'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { Select } from '@almanac/ui/select'
import { formatLongMonth } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import Link from 'next/link'
import { useState } from 'react'
import { ProposeTurns } from './propose-turns.tsx'
import { turnColumns, turnKey } from './turn-columns.tsx'

/** A month's turns, put there because the crews are free; a person ticks which become jobs. All that are open are ticked at first. */
export function MonthTurns({ rounds, onMonth }: { rounds: Rounds; onMonth: (month: string) => void }) {
  const display = useDisplay()
  const { month, due, months } = rounds
  const open = due.filter((turn) => turn.standing === 'open')
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const ticked = open.filter((turn) => !left.has(turnKey(turn)))
  const here = months.find((one) => one.month === month)
  const hours = (count: number) => showWhole(Math.round(count), display)
  return (
    <Section
      title={`Due in ${formatLongMonth(month, display)}`}
      actions={
        <Select
          label="Month"
          hideLabel
          value={month}
          choices={months.map((one) => ({ value: one.month, label: `${formatLongMonth(one.month, display)}: ${one.turns}` }))}
          onChange={(event) => onMonth(event.target.value)}
        />
      }
    >
      {here ? (
        <p className="mb-3 max-w-[75ch] text-soft">
          About {hours(here.hours)} hours of work; the crews have about {hours(here.freeHours)} left after rebeds. Yearly visits move to the
          month before or after when the crews are full.
        </p>
      ) : null}
      <DataTable
        caption="Due in the month"
        columns={turnColumns(display)}
        rows={due}
        rowKey={turnKey}
        rowName={(turn) => turn.siteLabel}
        rowHref={(turn) => `/sites/${turn.siteId}`}
        link={Link}
        selected={open.length > 0 ? new Set(ticked.map(turnKey)) : undefined}
        onSelect={open.length > 0 ? (selected) => setLeft(new Set(open.map(turnKey).filter((key) => !selected.has(key)))) : undefined}
        empty={<p className="text-soft">Nothing due this month. Agreements are added on a site’s page.</p>}
      />
      <div className="mt-3">
        <ProposeTurns month={month} turns={ticked} onDone={() => setLeft(new Set())} />
      </div>
    </Section>
  )
}
