import fc from 'fast-check'
import { Temporal } from 'temporal-polyfill'
import { describe, expect, test } from 'vitest'
import { dayNumber } from './calendar-day.ts'
import { isoDay } from './day-number.ts'
import { clockIn, clockOfMinute, dayIn, instantAt, instantIn, minuteOfClock, minutesBetween } from './zone-clock.ts'

// Zones with and without changes of clocks, south of the equator, of half and quarter hours, of a half hour's change (Lord Howe), and the far sides of the date line.
const ZONES = [
  ...['America/Phoenix', 'America/Chicago', 'America/New_York', 'America/St_Johns', 'Europe/London', 'Europe/Berlin'],
  ...['Asia/Kathmandu', 'Australia/Lord_Howe', 'Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Africa/Casablanca', 'America/Santiago'],
]
const zones = fc.constantFrom(...ZONES)
const days = fc.integer({ min: dayNumber('1990-01-01'), max: dayNumber('2030-12-31') }).map(isoDay)
const minutes = fc.integer({ min: 0, max: 1439 })

const temporal = (zone: string, day: string, minute: number) =>
  Temporal.PlainDate.from(day).toZonedDateTime({
    timeZone: zone,
    plainTime: Temporal.PlainTime.from({ hour: Math.floor(minute / 60), minute: minute % 60 }),
  }).epochMilliseconds

describe('clocks of zones agree with Temporal', () => {
  test('on the day and the clock of an instant', () =>
    fc.assert(
      fc.property(zones, days, fc.integer({ min: 0, max: 86_399_999 }), (zone, day, ms) => {
        const at = dayNumber(day) * 86_400_000 + ms
        const there = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(zone)
        expect(dayIn(zone, at)).toBe(there.toPlainDate().toString())
        expect(clockIn(zone, new Date(at))).toBe(there.toPlainTime().toString().slice(0, 5))
      }),
      { numRuns: 1500 },
    ))
  test('on the instant of a minute of a day', () =>
    fc.assert(
      fc.property(zones, days, minutes, (zone, day, minute) => {
        expect(instantIn(zone, day, minute).getTime()).toBe(temporal(zone, day, minute))
      }),
      { numRuns: 1500 },
    ))
  test('through every quarter of an hour around each change of clocks of four years', () => {
    for (const zone of ZONES) {
      let at: Temporal.ZonedDateTime | null = Temporal.ZonedDateTime.from(`2025-01-01T00:00[${zone}]`)
      for (at = at.getTimeZoneTransition('next'); at && at.year < 2029; at = at.getTimeZoneTransition('next'))
        for (const day of [at.toPlainDate().subtract({ days: 1 }), at.toPlainDate()].map(String))
          for (let minute = 0; minute < 1440; minute += 15)
            expect(instantIn(zone, day, minute).getTime(), `${zone} ${day} ${minute}`).toBe(temporal(zone, day, minute))
    }
  })
})

describe('the day in a zone', () => {
  // Offsets from the IANA time zone database: Phoenix is UTC-7 all year, Kiritimati UTC+14, New York UTC-4 in summer.
  test.each([
    ['America/Phoenix', '2026-12-03T06:59:59Z', '2026-12-02'],
    ['America/Phoenix', '2026-12-03T07:00:00Z', '2026-12-03'],
    ['Pacific/Kiritimati', '2026-12-31T10:00:00Z', '2027-01-01'],
    ['America/New_York', '2026-07-01T03:59:59Z', '2026-06-30'],
  ])('%s at %s is %s', (zone, instant, day) => expect([dayIn(zone, instant), dayIn(zone, new Date(instant))]).toEqual([day, day]))
})

describe('the instant of a minute of a day', () => {
  // US clocks go forward on 2026-03-08 and back on 2026-11-01 at 2:00 (Energy Policy Act of 2005, section 110).
  test.each([
    ['America/Phoenix', '2026-12-03', '08:00', '2026-12-03T15:00:00.000Z'],
    ['America/Chicago', '2026-03-07', '08:00', '2026-03-07T14:00:00.000Z'],
    ['America/Chicago', '2026-03-08', '08:00', '2026-03-08T13:00:00.000Z'],
    ['America/Chicago', '2026-03-08', '02:30', '2026-03-08T08:30:00.000Z'], // a time that is not: half an hour after the gap
    ['America/Chicago', '2026-11-01', '01:30', '2026-11-01T06:30:00.000Z'], // a time that is twice: the first
  ])('%s %s %s is %s', (zone, day, clock, instant) => {
    expect(instantAt(zone, day, clock).toISOString()).toBe(instant)
  })
})

test('clock times are minutes of a day and back', () => {
  expect([minuteOfClock('00:00'), minuteOfClock('09:05'), minuteOfClock('23:59')]).toEqual([0, 545, 1439])
  expect([clockOfMinute(0), clockOfMinute(545), clockOfMinute(1439)]).toEqual(['00:00', '09:05', '23:59'])
})

test('minutes pass by the instants, whatever the clocks do meanwhile', () =>
  expect(minutesBetween('2026-03-08T07:30:00Z', new Date('2026-03-08T08:30:00Z'))).toBe(60))

test('what is no instant is refused', () => expect(() => dayIn('UTC', 'yesterday')).toThrow('not an instant'))
