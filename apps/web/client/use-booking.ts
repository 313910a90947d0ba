'use client'
import type { BookVisit, CallOffVisit, MoveVisit } from '@almanac/contract/jobs'
import { type Unusual, unusualReasons } from '@almanac/records/day-plan'
import { useToast } from '@almanac/ui/toast'
import { useRef, useState } from 'react'
import type * as z from 'zod'
import { readFailure } from './failure.ts'
import { useSession } from './providers.tsx'
import { useCommand } from './use-command.ts'

export type Booking = Omit<z.input<typeof BookVisit>, 'commandId'>
export type Moving = Omit<z.input<typeof MoveVisit>, 'commandId'>
type CallingOff = Omit<z.input<typeof CallOffVisit>, 'commandId'>

/** Where a visit stood, to put it back. */
export type OriginalSlot = { crewDayId: string; at: string }

type PendingBooking =
  | { what: 'book'; body: Booking; label: string; undone?: boolean }
  | { what: 'move'; body: Moving; label: string; stood: OriginalSlot; undone?: boolean }
  | { what: 'call-off'; body: CallingOff; label: string; stood: OriginalSlot; undone?: boolean }

/**
 * Books, moves and calls off visits. Each answer is said at the foot of the page with its undo; what is unusual is asked first, and what
 * went wrong stays until it is dealt with: `<BookingAnswer>` shows both.
 */
export function useBooking() {
  const { api } = useSession()
  const showToast = useToast()
  const asked = useRef<PendingBooking | null>(null)
  const [open, setOpen] = useState<PendingBooking | null>(null)
  const done = (text: string, undo: () => void) => {
    const undone = asked.current?.undone
    setOpen(null)
    showToast({ text: undone ? `Undone: ${text}` : text, undo: undone ? undefined : undo })
  }
  const book = useCommand(api.jobs.book.mutationOptions(), {
    onDone: ({ visitId, version }) => {
      const was = asked.current
      if (was?.what !== 'book') return
      const stood = { crewDayId: was.body.crewDayId, at: was.body.at }
      done(`${was.label} is booked.`, () => ask({ what: 'call-off', body: { visitId, version }, label: was.label, stood, undone: true }))
    },
  })
  const move = useCommand(api.jobs.moveVisit.mutationOptions(), {
    onDone: ({ visitId, version }) => {
      const was = asked.current
      if (was?.what !== 'move') return
      const body = { visitId, version, ...was.stood, confirmed: [...unusualReasons] }
      const stood = { crewDayId: was.body.crewDayId ?? was.stood.crewDayId, at: was.body.at }
      done(`${was.label} is moved.`, () => ask({ what: 'move', body, label: was.label, stood, undone: true }))
    },
  })
  const callOff = useCommand(api.jobs.callOffVisit.mutationOptions(), {
    onDone: ({ jobId, jobVersion }) => {
      const was = asked.current
      if (was?.what !== 'call-off') return
      const body = { jobId, jobVersion, ...was.stood, confirmed: [...unusualReasons] }
      done(`${was.label} is off the sheet.`, () => ask({ what: 'book', body, label: was.label, undone: true }))
    },
  })
  const ask = (next: PendingBooking) => {
    asked.current = next
    setOpen(next)
    for (const one of [book, move, callOff]) one.reset()
    if (next.what === 'book') book.send({ confirmed: [], ...next.body })
    else if (next.what === 'move') move.send({ confirmed: [], ...next.body })
    else callOff.send({ confirmed: [], ...next.body })
  }
  const close = () => {
    for (const one of [book, move, callOff]) one.reset()
    setOpen(null)
  }
  const error = book.error ?? move.error ?? callOff.error
  const failure = error && open ? readFailure(error) : null
  const confirmed = (open && 'confirmed' in open.body ? open.body.confirmed : undefined) ?? []
  const unusual = (failure?.detail.confirm as Unusual[] | undefined) ?? []
  return {
    book: (body: Booking, label: string) => ask({ what: 'book', body, label }),
    move: (body: Moving, label: string, stood: OriginalSlot) => ask({ what: 'move', body, label, stood }),
    callOff: (body: CallingOff, label: string, stood: OriginalSlot) => ask({ what: 'call-off', body, label, stood }),
    /** What is unusual about it, and sending the same again with all of it confirmed. */
    unusual,
    confirm:
      open && unusual.length > 0
        ? () => ask({ ...open, body: { ...open.body, confirmed: [...confirmed, ...unusual] } } as PendingBooking)
        : null,
    /** Puts one's own value over the one that stands meanwhile. */
    overrule: (version: number) => {
      if (open?.what === 'move') ask({ ...open, body: { ...open.body, version } })
    },
    retry: () => (open ? ask(open) : undefined),
    asked: open,
    failure,
    busy: book.isPending || move.isPending || callOff.isPending,
    close,
  }
}

export type BookingActions = ReturnType<typeof useBooking>
