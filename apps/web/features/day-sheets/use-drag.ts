'use client'
import type { DaySheet, SheetFit, SheetVisit } from '@almanac/contract/day-sheets'
import { jobKindWords } from '@almanac/records/job-kind'
import { freeGaps } from '@almanac/service-rules/day-sheets/free-gaps'
import { useToast } from '@almanac/ui/toast'
import { clockIn, minutesBetween } from '@almanac/units/calendar/zone-clock'
import { type DragEvent, useState } from 'react'
import { useSession } from '@/client/providers'
import type { BookingActions } from '@/client/use-booking'

/** What is being dragged: a job that would fit, or a visit with the sheet it stands on. */
export type Dragged = { kind: 'fit'; fit: SheetFit } | { kind: 'visit'; visit: SheetVisit; sheet: DaySheet }

const STEP_MS = 5 * 60_000
const stretch = (one: { startsAt: string; endsAt: string }) => ({ startMs: Date.parse(one.startsAt), endMs: Date.parse(one.endsAt) })

const minutesOf = (thing: Dragged) => (thing.kind === 'fit' ? thing.fit.minutes : minutesBetween(thing.visit.startsAt, thing.visit.endsAt))

/** The first moment of a sheet, not before `fromMs`, at which something so long has room; the dragged visit's own time counts as free. */
export function firstRoom(sheet: DaySheet, minutes: number, fromMs: number, exceptVisitId?: string): number | null {
  const taken = sheet.visits.filter((visit) => visit.id !== exceptVisitId).map(stretch)
  for (const gap of freeGaps(stretch(sheet), taken)) {
    const startMs = Math.ceil(Math.max(gap.startMs, fromMs) / STEP_MS) * STEP_MS
    if (startMs + minutes * 60_000 <= gap.endMs) return startMs
  }
  return null
}

/**
 * Dragging by hand what can also be done by click or key: a faint line or a visit onto a free stretch, or onto another crew's folded sheet, where it
 * takes the first room there is.
 */
export function useDrag(desk: BookingActions) {
  const { me } = useSession()
  const { timeZone } = me.company
  const showToast = useToast()
  const [thing, setThing] = useState<Dragged | null>(null)
  const place = (sheet: DaySheet, atMs: number) => {
    if (!thing) return
    const at = clockIn(timeZone, new Date(atMs).toISOString())
    if (thing.kind === 'fit') {
      const { fit } = thing
      desk.book({ jobId: fit.jobId, jobVersion: fit.jobVersion, crewDayId: sheet.id, at }, `${jobKindWords[fit.kind]} · ${fit.siteLabel}`)
    } else {
      const { visit } = thing
      const stood = { crewDayId: thing.sheet.id, at: clockIn(timeZone, visit.startsAt) }
      desk.move(
        { visitId: visit.id, version: visit.version, crewDayId: sheet.id, at },
        `${jobKindWords[visit.kind]} · ${visit.siteLabel}`,
        stood,
      )
    }
    setThing(null)
  }
  return {
    /** Props of something that can be dragged. */
    source: (what: Dragged) => ({
      draggable: true,
      onDragStart: (event: DragEvent) => {
        event.dataTransfer.effectAllowed = 'move'
        event.dataTransfer.setData('text/plain', what.kind === 'fit' ? what.fit.siteLabel : what.visit.siteLabel)
        setThing(what)
      },
      onDragEnd: () => setThing(null),
    }),
    /** Props of a place to drop on, from `fromMs` on: a free stretch begins there, a folded sheet at its own beginning. */
    target: (sheet: DaySheet, fromMs: number) =>
      thing
        ? {
            'data-drop': true,
            onDragOver: (event: DragEvent) => event.preventDefault(),
            onDrop: (event: DragEvent) => {
              event.preventDefault()
              const except = thing.kind === 'visit' ? thing.visit.id : undefined
              const room = firstRoom(sheet, minutesOf(thing), Math.max(fromMs, Date.now()), except)
              if (room === null) showToast({ text: `${sheet.name} has no free stretch long enough. Nothing was changed.` })
              else place(sheet, room)
            },
          }
        : {},
  }
}

export type Drag = ReturnType<typeof useDrag>
