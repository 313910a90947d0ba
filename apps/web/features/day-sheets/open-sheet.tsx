'use client'
import type { DaySheet, SheetFit, SheetVisit } from '@almanac/contract/day-sheets'
import type { DrivePace } from '@almanac/records/drive-pace'
import { jobKindWords } from '@almanac/records/job-kind'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { clockIn, dayIn, minutesBetween } from '@almanac/units/calendar/zone-clock'
import { formatClock } from '@almanac/units/format-clock'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { BookingAnswer } from '@/client/booking-answer'
import { readFailure } from '@/client/failure'
import { PlaceByHand } from '@/client/place-by-hand'
import { useSession } from '@/client/providers'
import type { BookingActions } from '@/client/use-booking'
import { useToday } from '@/client/use-today'
import { BreakLine } from './break-line.tsx'
import { DisruptionForm } from './crew-disruption.tsx'
import { DriveLine } from './drive-line.tsx'
import { FitLine, FreeLine } from './free-line.tsx'
import { LeftOver } from './left-over.tsx'
import { LoadList } from './load-list.tsx'
import { SheetHead } from './sheet-head.tsx'
import { sheetLines } from './sheet-lines.ts'
import { SheetMap } from './sheet-map.tsx'
import type { Drag } from './use-drag.ts'
import { expectedOf } from './use-expected.ts'
import { VisitLine } from './visit-line.tsx'

export type Travel = { yard: { latitude: number; longitude: number } | null; pace: DrivePace | null }
export type OpenSheetProps = {
  sheet: DaySheet
  others: readonly DaySheet[]
  travel: Travel
  nowMs: number | null
  desk: BookingActions
  drag: Drag
  onFold: () => void
  onChange: () => void
}

/** The open sheet: its head, then down the clock its visits, what is free, and the jobs that would fit there. */
export function OpenSheet({ sheet, others, travel, nowMs, desk, drag, onFold, onChange }: OpenSheetProps) {
  const display = useDisplay()
  const { api, me } = useSession()
  const today = useToday()
  const { timeZone } = me.company
  const [mishap, setMishap] = useState(false)
  const [moving, setMoving] = useState<SheetVisit | null>(null)
  const over = sheet.day < today
  const fits = useQuery(api.daySheets.fits.queryOptions({ input: { crewDayId: sheet.id }, enabled: !over }))
  const lines = sheetLines(sheet, over ? [] : (fits.data?.fits ?? []))
  const label = (one: SheetVisit | SheetFit) => `${jobKindWords[one.kind]} · ${one.siteLabel}`
  const expected = nowMs === null ? null : expectedOf(sheet, nowMs)
  const stood = (visit: SheetVisit) => ({ crewDayId: sheet.id, at: clockIn(timeZone, visit.startsAt) })
  const place = (fit: SheetFit) => desk.book({ jobId: fit.jobId, jobVersion: fit.jobVersion, crewDayId: sheet.id, at: fit.at }, label(fit))
  const callOff = (visit: SheetVisit) => desk.callOff({ visitId: visit.id, version: visit.version }, label(visit), stood(visit))
  return (
    <section aria-label={`Day sheet of ${sheet.name}`} className="my-3 border border-ink bg-sheet">
      <SheetHead sheet={sheet} onFold={onFold} onChange={onChange} onMishap={over ? undefined : () => setMishap(true)} />
      <div className="px-3 sm:px-5">
        <BookingAnswer desk={desk} />
        {fits.error ? <Problem happened={readFailure(fits.error).message} onRetry={() => void fits.refetch()} /> : null}
      </div>
      <ol className="flex flex-col gap-1 px-1 py-3 sm:px-5">
        {lines.map((line) =>
          line.kind === 'visit' ? (
            <VisitLine
              key={line.key}
              visit={line.visit}
              outside={line.outside}
              expected={expected?.get(line.visit.id) ?? null}
              busy={desk.busy}
              drag={line.visit.state === 'booked' ? drag.source({ kind: 'visit', visit: line.visit, sheet }) : {}}
              onMove={() => setMoving(line.visit)}
              onCallOff={() => callOff(line.visit)}
            />
          ) : line.kind === 'drive' ? (
            <DriveLine key={line.key} line={line} />
          ) : line.kind === 'break' ? (
            <BreakLine key={line.key} line={line} />
          ) : (
            <FreeStretch key={line.key} line={line} sheet={sheet} drag={drag} busy={desk.busy} onPlace={place} />
          ),
        )}
        <li className="grid grid-cols-[3.5rem_1fr] gap-x-3 text-small text-soft sm:grid-cols-[4rem_1fr]">
          <span className="text-right text-base tabular-nums">{formatClock(sheet.endsAt, display)}</span>
          <span className="px-4.5">the crew’s day ends{dayIn(timeZone, sheet.endsAt) === sheet.day ? '' : ' on the next day'}</span>
        </li>
      </ol>
      {fits.isLoading ? <p className="px-3 pb-3 text-small text-soft sm:px-5">Looking for jobs that would fit…</p> : null}
      <LoadList crewDayId={sheet.id} />
      <SheetMap sheet={sheet} yard={sheet.home ?? travel.yard} pace={travel.pace} />
      {over ? null : <LeftOver left={fits.data?.left ?? []} />}
      {mishap ? <DisruptionForm sheet={sheet} sheets={others} onClose={() => setMishap(false)} /> : null}
      {moving ? (
        <PlaceByHand
          title={`Move ${label(moving)}`}
          sendLabel="Move"
          minutes={minutesBetween(moving.startsAt, moving.endsAt)}
          start={{ day: sheet.day, ...stood(moving) }}
          onClose={() => setMoving(null)}
          onSend={({ crewDayId, at }) => {
            setMoving(null)
            desk.move({ visitId: moving.id, version: moving.version, crewDayId, at }, label(moving), stood(moving))
          }}
        />
      ) : null}
    </section>
  )
}

type Free = Extract<ReturnType<typeof sheetLines>[number], { kind: 'free' }>

type FreeStretchProps = { line: Free; sheet: DaySheet; drag: Drag; busy: boolean; onPlace: (fit: SheetFit) => void }

function FreeStretch({ line, sheet, drag, busy, onPlace }: FreeStretchProps) {
  return (
    <>
      <FreeLine from={line.at} until={line.endsAt} minutes={line.minutes} drop={drag.target(sheet, line.at)} />
      {line.fits.map((fit) => (
        <FitLine
          key={fit.jobId}
          fit={fit}
          day={sheet.day}
          busy={busy}
          drag={drag.source({ kind: 'fit', fit })}
          onPlace={() => onPlace(fit)}
        />
      ))}
    </>
  )
}
