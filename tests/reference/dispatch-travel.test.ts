import { seededRandom } from '@almanac/dispatch/search/random'
import { calibrate, calibrationOf, type DriveObservation } from '@almanac/dispatch/travel/calibrate'
import { estimateLeg, rushFactor, UNCALIBRATED, usualRoadMiles, usualSeconds } from '@almanac/dispatch/travel/estimate-leg'
import { greatCircleMiles, type LatLon } from '@almanac/dispatch/travel/point'
import { legKey, readTableAnswer, tablePath } from '@almanac/dispatch/travel/table-answer'
import { travelTable } from '@almanac/dispatch/travel/travel-table'
import { describe, expect, it } from 'vitest'

describe('great-circle distance', () => {
  it('agrees with published worked examples', () => {
    // C. Veness, "Calculate distance, bearing and more between Latitude/Longitude points": Land's End to John o' Groats, 968.9 km.
    const km = greatCircleMiles({ lat: 50.06638889, lon: -5.71472222 }, { lat: 58.64388889, lon: -3.07 }) * 1.609344
    expect(km).toBeCloseTo(968.9, 1)
    // One minute of arc of a great circle on a sphere of 6,371.0088 km: 2πR / 21,600 = 1.85325 km.
    expect(greatCircleMiles({ lat: 10, lon: 20 }, { lat: 10 + 1 / 60, lon: 20 }) * 1.609344).toBeCloseTo(1.85325, 4)
    // Half way round.
    expect(greatCircleMiles({ lat: 0, lon: 10 }, { lat: 0, lon: -170 }) * 1.609344).toBeCloseTo(Math.PI * 6371.0088, 6)
  })
})

describe('the estimate without a server', () => {
  it('takes 1.3 for local and 1.2 for regional roads (Newell 1980; Giacomin & Levinson 2015: 1.21–1.26 typical)', () => {
    expect(usualRoadMiles(2)).toBeCloseTo(2.6, 9)
    expect(usualRoadMiles(50)).toBeCloseTo(60, 9)
  })
  it('drives 25–30 mph in town and 40–45 mph in the country (common practice, no source)', () => {
    expect(1 / (usualSeconds(1) / 3600)).toBeGreaterThanOrEqual(25)
    expect(1 / (usualSeconds(1) / 3600)).toBeLessThanOrEqual(30)
    expect(60 / (usualSeconds(60) / 3600)).toBeGreaterThanOrEqual(40)
    expect(60 / (usualSeconds(60) / 3600)).toBeLessThanOrEqual(45)
  })
  it('never takes less time for more miles, whatever the factors', () => {
    for (const calibration of [UNCALIBRATED, { ...UNCALIBRATED, shortFactor: 1.4, longFactor: 0.9 }]) {
      let before = 0
      for (let i = 1; i < 400; i++) {
        const leg = estimateLeg({ lat: 40, lon: -90 }, { lat: 40 + i * 0.003, lon: -90 }, calibration)
        expect(leg.seconds).toBeGreaterThan(before)
        before = leg.seconds as number
      }
    }
  })
  it('says unknown without coordinates, never a number', () => {
    const here = { lat: 41, lon: -93 }
    for (const point of [null, { lat: 0, lon: 0 }, { lat: Number.NaN, lon: 1 }, { lat: 91, lon: 0 }]) {
      expect(estimateLeg(here, point, UNCALIBRATED)).toEqual({ origin: 'unknown', seconds: null, miles: null })
    }
    const table = travelTable(
      [
        { id: 'yard', at: here },
        { id: 'farm', at: null },
      ],
      { calibration: UNCALIBRATED },
    )
    expect([...table.seconds]).toEqual([0, -1, -1, 0])
    expect(table.origins).toBe('euue')
  })
})

describe('learning from recorded drives', () => {
  const random = seededRandom(42)
  const uniform = (): number => random.below(1_000_000) / 1_000_000
  const point = (): LatLon => ({ lat: 41 + uniform() * 0.4, lon: -93 + uniform() * 0.4 })
  const drive = (factor: number): DriveObservation => {
    const from = point()
    const to = point()
    const usual = usualRoadMiles(greatCircleMiles(from, to))
    const noise = Math.exp((uniform() + uniform() - 1) * 0.3)
    return {
      from,
      to,
      minutes: (usualSeconds(usual) / 60) * factor * noise,
      miles: usual * 1.1,
      day: `2026-11-0${1 + random.below(9)}`,
      minuteOfDay: 12 * 60,
    }
  }
  it('finds a known factor within 3%, one drive in five being nonsense', () => {
    const drives = Array.from({ length: 400 }, (_, i) => (i % 5 === 0 ? { ...drive(1.25), minutes: 200 } : drive(1.25)))
    const { pace, setAside } = calibrate(drives)
    expect(Number(pace?.longFactor) / 1.25).toBeGreaterThan(0.97)
    expect(Number(pace?.longFactor) / 1.25).toBeLessThan(1.03)
    expect(pace?.roadFactor).toBeCloseTo(1.1, 1)
    expect(setAside).toBeGreaterThan(60)
  })
  it('says nothing of fewer than 30 drives, or of drives of fewer than five days', () => {
    const some = (many: number, days: number) =>
      Array.from({ length: many }, (_, i) => ({ ...drive(1.2), day: `2026-11-0${1 + (i % days)}` }))
    expect(calibrationOf(null)).toEqual(UNCALIBRATED)
    for (const [many, days] of [
      [0, 1],
      [29, 9],
      [300, 4],
    ] as const)
      expect(calibrate(some(many, days)).pace).toBeNull()
    expect(calibrate(some(60, 5)).pace?.factor).toBeGreaterThan(1.1)
  })
  it('takes no drive faster than a van: half a minute for eleven miles, a hundred times over', () => {
    const fast = Array.from({ length: 100 }, () => ({ ...drive(1), minutes: 0.5 }))
    expect(calibrate(fast)).toMatchObject({ pace: null, used: 0, setAside: 100 })
    const real = Array.from({ length: 100 }, () => drive(1))
    expect(calibrate([...fast, ...real]).pace?.factor).toBeCloseTo(calibrate(real).pace?.factor ?? Number.NaN, 9)
  })
  it('believes no factor below 0.7 or above 1.5 (our choice, no source)', () => {
    expect(calibrate(Array.from({ length: 200 }, () => drive(0.55))).pace?.factor).toBe(0.7)
    expect(calibrate(Array.from({ length: 200 }, () => drive(2.5))).pace?.factor).toBe(1.5)
  })
  it('draws drives towards the usual ones once: 36 that take 1.4 times as long go three quarters of the way', () => {
    // exp(36 × ln 1.4 ÷ (36 + 12)) = 1.4^0.75 = 1.2870, by hand.
    const same = Array.from({ length: 36 }, (_, i) => {
      const one = drive(1)
      const usual = usualRoadMiles(greatCircleMiles(one.from as LatLon, one.to as LatLon))
      return { ...one, minutes: (usualSeconds(usual) / 60) * 1.4, day: `2026-11-0${1 + (i % 6)}` }
    })
    expect(calibrate(same).pace?.factor).toBeCloseTo(1.287, 3)
  })
  it('does not hold the rush hour against the firm', () => {
    const factor = rushFactor(UNCALIBRATED, 8 * 60)
    expect(factor).toBeGreaterThan(1)
    const inRush = Array.from({ length: 300 }, () => ({ ...drive(factor), minuteOfDay: 8 * 60 }))
    expect(calibrate(inRush).pace?.longFactor).toBeCloseTo(1, 1)
  })
  it('gives numbers for any nonsense', () => {
    const nonsense = [Number.NaN, -5, 0, 1e9].map((minutes): DriveObservation => ({ ...drive(1), minutes }))
    expect(calibrate([...nonsense, { ...drive(1), from: null }])).toMatchObject({ used: 0, setAside: 5, pace: null })
  })
})

describe("a table server's answer", () => {
  const a = { lat: 41.00001, lon: -93 }
  const b = { lat: 41.1, lon: -93.2 }
  it('is read with its holes (OSRM HTTP API v1, table service: seconds, metres, null where there is no route)', () => {
    const read = readTableAnswer({ code: 'Ok', durations: [[600, null]], distances: [[16093.44, null]] }, [a], [b, a])
    if ('fault' in read) throw new Error(read.fault)
    expect(read.missing).toBe(1)
    expect(read.legs.get(legKey(a, b))).toEqual({ seconds: 600, miles: 10 })
    const table = travelTable(
      [
        { id: 'a', at: a },
        { id: 'b', at: b },
      ],
      { calibration: UNCALIBRATED, server: read.legs },
    )
    expect(table.seconds[1]).toBe(600)
    expect(table.origins).toBe('esee')
  })
  it('is refused with a sentence when it is none', () => {
    for (const wrong of [
      null,
      'no',
      {},
      { code: 'Ok', durations: [[1]] },
      { code: 'InvalidQuery', message: 'Too many coordinates' },
      { durations: 5 },
    ]) {
      expect(readTableAnswer(wrong, [a], [b, a])).toMatchObject({ fault: expect.stringMatching(/stay estimated/) })
    }
  })
  it('is kept under coordinates to 4 decimals', () => {
    expect(legKey(a, b)).toBe(legKey({ lat: 41.00003, lon: -93.00002 }, b))
    expect(legKey(a, b)).not.toBe(legKey(b, a))
    expect(legKey({ lat: -0.00001, lon: 1 }, b)).toBe(legKey({ lat: 0.00001, lon: 1 }, b))
    expect(tablePath([a], [b])).toBe(
      '/table/v1/driving/-93.00000,41.00001;-93.20000,41.10000?sources=0&destinations=1&annotations=duration,distance',
    )
  })
})
