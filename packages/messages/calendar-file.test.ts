import ICAL from 'ical.js'
import { describe, expect, test } from 'vitest'
import { calendarFile } from './calendar-file.ts'

// Read back by another library (ical.js), which knows RFC 5545 by itself.
const MADE = new Date('2026-12-02T16:00:00Z')
const one = {
  uid: 'visit-1@almanac',
  revision: 3,
  startsAt: new Date('2026-12-03T15:30:00Z'),
  endsAt: new Date('2026-12-03T18:00:00Z'),
  title: 'Rebed, 10 × 54 in; “cellar”',
  place: 'Orchard Lane 14, Larkmoor',
  words: 'Between 8:30 and 10:30.\nPlease keep the way to the softener clear; a, b; c\\d',
}

function readBack(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text))
  return { calendar, events: calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event)) }
}

describe('a calendar file', () => {
  test('says the same when another reader opens it, whatever signs are in the words', () => {
    const { events } = readBack(calendarFile({ name: 'Visits', appointments: [one] }, MADE))
    const [event] = events
    expect(events).toHaveLength(1)
    expect(event?.summary).toBe(one.title)
    expect(event?.location).toBe(one.place)
    expect(event?.description).toBe(one.words)
    expect(event?.startDate.toJSDate()).toEqual(one.startsAt)
    expect(event?.endDate.toJSDate()).toEqual(one.endsAt)
    expect(event?.uid).toBe(one.uid)
    expect(event?.sequence).toBe(3)
  })

  test('keeps to the lines of RFC 5545: CRLF, at most 75 bytes each, the properties it must have', () => {
    const text = calendarFile({ name: 'Visits', appointments: [{ ...one, words: 'ü'.repeat(200) }] }, MADE)
    const lines = text.split('\r\n')
    expect(lines.filter((line) => Buffer.byteLength(line) > 75)).toEqual([])
    expect(text.replaceAll('\r\n', '')).not.toContain('\n')
    for (const needed of [
      'BEGIN:VCALENDAR',
      'VERSION:2.0',
      'PRODID:',
      'DTSTAMP:20261202T160000Z',
      'DTSTART:20261203T153000Z',
      'END:VCALENDAR',
    ])
      expect(text).toContain(needed)
  })

  test('without appointments is a calendar all the same', () => {
    expect(readBack(calendarFile({ name: 'Visits', refreshMinutes: 15, appointments: [] }, MADE)).events).toEqual([])
  })
})
