import { describe, expect, test } from 'vitest'
import { calibratePace, type ObservedDrive } from './calibrate-pace.ts'
import { circuity, estimateDrive, freeMinutes, rushFactor } from './estimate-drive.ts'
import { EARTH_RADIUS_MILES, straightMiles } from './great-circle.ts'
import { driveKey, readTableAnswer } from './read-table-answer.ts'
import { USUAL_TRAVEL } from './travel-model.ts'

const yard = { latitude: 41.71, longitude: -88.42 }
const east = (miles: number) => ({ latitude: 41.71, longitude: yard.longitude + miles / (69.0934 * Math.cos((41.71 * Math.PI) / 180)) })

describe('a straight line', () => {
  test('is 2,886.4 km from Nashville’s airport to Los Angeles’', () => {
    // The haversine example of Rosetta Code: 2887.2599506 km on a sphere of 6372.8 km, so ×6371.0088/6372.8 here.
    const miles = straightMiles({ latitude: 36.12, longitude: -86.67 }, { latitude: 33.94, longitude: -118.4 })
    expect(miles * 1.609344).toBeCloseTo(2887.2599506071106 * (6371.0088 / 6372.8), 4)
  })
  test('round half the equator is π times the radius, and nothing to itself', () => {
    expect(straightMiles({ latitude: 0, longitude: 0 }, { latitude: 0, longitude: 180 })).toBeCloseTo(Math.PI * EARTH_RADIUS_MILES, 6)
    expect(straightMiles(yard, yard)).toBe(0)
  })
})

describe('a drive from coordinates', () => {
  test('takes 1.3 times the line when local and 1.2 when regional', () => {
    expect([circuity(3), circuity(60)]).toEqual([1.3, 1.2])
  })
  test('of 2 straight miles is 2.6 road miles at 27.5 mph and two minutes to stop', () => {
    const drive = estimateDrive(yard, east(2))
    expect(drive).toMatchObject({ basis: 'estimated' })
    if (drive.basis === 'unknown') return
    expect(drive.miles).toBeCloseTo(2.6, 2)
    expect(drive.minutes).toBeCloseTo(2 + (60 * 2.6) / 27.5, 1)
  })
  test('never gets shorter with distance, and is slower in rush hours only', () => {
    let before = 0
    for (let miles = 0.1; miles < 120; miles += 0.1) {
      const drive = estimateDrive(yard, east(miles))
      if (drive.basis === 'unknown') throw new Error('a known place')
      expect(drive.minutes).toBeGreaterThan(before)
      before = drive.minutes
    }
    expect([rushFactor(6 * 60 + 59), rushFactor(7 * 60), rushFactor(9 * 60), rushFactor(17 * 60)]).toEqual([1, 1.2, 1, 1.2])
  })
  test('is unknown where a place is not known, and never a made-up figure', () => {
    expect(estimateDrive(null, yard)).toEqual({ basis: 'unknown' })
    expect(estimateDrive(yard, { latitude: Number.NaN, longitude: 0 })).toEqual({ basis: 'unknown' })
    expect(estimateDrive(yard, { latitude: 95, longitude: 0 })).toEqual({ basis: 'unknown' })
  })
  test('between two doors at one place is none', () => {
    expect(estimateDrive(yard, yard)).toEqual({ basis: 'estimated', minutes: 0, miles: 0 })
    expect(freeMinutes(Number.NaN)).toBe(0)
  })
})

describe('the firm’s own pace', () => {
  const drives = (count: number, factor: number): ObservedDrive[] =>
    Array.from({ length: count }, (_, n) => {
      const to = east(2 + (n % 9))
      const drive = estimateDrive(yard, to)
      const minutes = drive.basis === 'unknown' ? 0 : (drive.minutes - USUAL_TRAVEL.stopMinutes) * factor + USUAL_TRAVEL.stopMinutes
      return { from: yard, to, minuteOfDay: 12 * 60, minutes }
    })
  test('stays at 1 without drives, goes half-way with ten, and follows four hundred', () => {
    expect(calibratePace([], USUAL_TRAVEL)).toMatchObject({ pace: 1, drives: 0 })
    expect(calibratePace(drives(10, 1.44), USUAL_TRAVEL).pace).toBeCloseTo(1.2, 6)
    expect(calibratePace(drives(400, 1.44), USUAL_TRAVEL).pace).toBeCloseTo(1.44 ** (400 / 410), 6)
  })
  test('is not fooled by lunches, nor by what is no drive', () => {
    const lunches = drives(100, 1.1).map((one, n) => (n % 5 === 0 ? { ...one, minutes: one.minutes + 40 } : one))
    const odd = [
      { from: yard, to: yard, minuteOfDay: 600, minutes: 30 },
      { from: yard, to: east(5), minuteOfDay: 600, minutes: 400 },
      { from: yard, to: east(5), minuteOfDay: 600, minutes: Number.NaN },
    ]
    const { pace, drives: counted } = calibratePace([...lunches, ...odd], USUAL_TRAVEL)
    expect(counted).toBe(100)
    expect(pace).toBeGreaterThan(1.08)
    expect(pace).toBeLessThan(1.12)
  })
})

describe('a server’s table', () => {
  test('is read: seconds to minutes, metres to miles, null where there is no road', () => {
    const answer = {
      code: 'Ok',
      durations: [
        [0, 600],
        [null, 0],
      ],
      distances: [
        [0, 1609.344],
        [null, 0],
      ],
    }
    expect(readTableAnswer(answer, 2, 2)).toEqual([
      [
        { basis: 'server', minutes: 0, miles: 0 },
        { basis: 'server', minutes: 10, miles: 1 },
      ],
      [null, { basis: 'server', minutes: 0, miles: 0 }],
    ])
  })
  test.each([
    null,
    'gateway timeout',
    { code: 'NoTable', durations: [[0]] },
    { durations: [[0, 1]] },
    { durations: [['0']] },
    { durations: [[-5]] },
    { durations: [[Number.NaN]] },
  ])('that is none is refused: %j', (answer) => {
    expect(readTableAnswer(answer, 1, 1)).toBeNull()
  })
  test('is kept under its places to about 11 m', () => {
    expect(driveKey(yard, { latitude: 41.710004, longitude: -88.42 })).toBe(driveKey(yard, yard))
    expect(driveKey(yard, { latitude: 41.7102, longitude: -88.42 })).not.toBe(driveKey(yard, yard))
  })
})
