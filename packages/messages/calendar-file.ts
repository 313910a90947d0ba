import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator'

/** One appointment: instants in UTC; `uid` stays the same while it moves, `revision` counts its changes. */
export type Appointment = {
  uid: string
  revision: number
  startsAt: Date
  endsAt: Date
  title: string
  place: string
  words: string
}

export type CalendarFile = {
  name: string
  /** A subscribed calendar is asked for again about this often, minutes. */
  refreshMinutes?: number
  appointments: readonly Appointment[]
}

/** A calendar as text/calendar (RFC 5545). Instants are written in UTC, so that every reader shows them in its own zone. `madeAt` stamps the file. */
export function calendarFile({ name, refreshMinutes, appointments }: CalendarFile, madeAt: Date): string {
  const calendar = ical({
    name,
    prodId: { company: 'Rebed Almanac', product: 'visits', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  })
  if (refreshMinutes) calendar.ttl(refreshMinutes * 60)
  for (const { uid, revision, startsAt, endsAt, title, place, words } of appointments)
    calendar.createEvent({
      id: uid,
      sequence: revision,
      start: startsAt,
      end: endsAt,
      stamp: madeAt,
      summary: title,
      location: place,
      description: words,
      status: ICalEventStatus.CONFIRMED,
    })
  return calendar.toString()
}
