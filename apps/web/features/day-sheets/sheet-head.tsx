'use client'
import type { DaySheet } from '@almanac/contract/day-sheets'
import { Button } from '@almanac/ui/button'
import { PrintButton } from '@almanac/ui/print-button'
import { StatusWord } from '@almanac/ui/status-word'
import { formatClocks, formatDuration } from '@almanac/units/format-clock'
import { useSession } from '@/client/providers'
import { useRebedFirm } from '@/client/use-rebed-firm'
import { sheetMinutes } from './sheet-lines.ts'
import { loadWords } from './sheet-load.ts'
import { hoursTrouble } from './sheet-trouble.ts'

type SheetHeadProps = { sheet: DaySheet; onFold: () => void; onChange: () => void; onMishap?: () => void }

/** The head of the open sheet: crew, vehicle, load, hours, and whether all stands within them. */
export function SheetHead({ sheet, onFold, onChange, onMishap }: SheetHeadProps) {
  const { me } = useSession()
  const display = me.company
  const load = loadWords(sheet, useRebedFirm())
  const { booked, free } = sheetMinutes(sheet)
  const wrong = hoursTrouble(sheet, display)
  const people = sheet.members.map((member) => member.name).join(', ')
  return (
    <div className="grid items-start gap-x-4 border-b border-line px-3 py-2.5 sm:grid-cols-[1fr_auto] sm:px-5">
      <div className="flex min-w-0 flex-wrap items-baseline gap-x-6">
        <button type="button" data-line data-open aria-expanded onClick={onFold} className="min-h-control text-left text-h2 font-semibold">
          {sheet.name}
          <span className="sr-only"> (fold)</span>
        </button>
        <span className="flex min-w-0 grow flex-wrap gap-x-6">
          <span className="text-soft">{people || 'nobody yet'}</span>
          {sheet.vehicle ? <span>{sheet.vehicle.name}</span> : null}
          {load.over ? (
            <StatusWord shape="triangle" tone="danger">
              {load.words}: over capacity
            </StatusWord>
          ) : (
            <span>{load.words}</span>
          )}
          <span>
            {formatDuration(booked, display)} booked, {formatDuration(free, display)} free
          </span>
          <span>{formatClocks(sheet.startsAt, sheet.endsAt, display)}</span>
          {wrong.length > 0 ? (
            <StatusWord shape="triangle" tone="danger">
              {wrong.length === 1 ? wrong[0]?.words : `${wrong.length} times don’t fit`}
            </StatusWord>
          ) : (
            <StatusWord shape="tick" tone="done">
              inside hours, drives counted
            </StatusWord>
          )}
        </span>
      </div>
      <span className="flex flex-wrap justify-end gap-x-1 max-sm:-mx-3.5 max-sm:justify-start print:hidden">
        <Button kind="quiet" onClick={onChange}>
          Change crew
        </Button>
        {onMishap ? (
          <Button kind="quiet" onClick={onMishap}>
            Crew or vehicle problem
          </Button>
        ) : null}
        <PrintButton kind="quiet" />
      </span>
      {sheet.warnings.length > 0 ? (
        <ul className="sm:col-span-2">
          {sheet.warnings.map((words) => (
            <li key={words}>
              <StatusWord shape="triangle" tone="danger">
                {words}
              </StatusWord>
            </li>
          ))}
        </ul>
      ) : null}
      {sheet.notes ? <p className="sm:col-span-2 text-small text-soft">{sheet.notes}</p> : null}
    </div>
  )
}
