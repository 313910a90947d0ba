import { describe, expect, test } from 'vitest'
import { fitMap, scaleBar, spreadLabels } from './map-layout.ts'

const heights = { least: 200, most: 600 }
const a = { latitude: 41.7, longitude: -88.5 }
const b = { latitude: 41.8, longitude: -88.3 }

describe('fitting places', () => {
  test('keeps all of them inside, north up and east right', () => {
    const map = fitMap([a, b], 500, heights, 30)
    const [first, second] = [map.at(a), map.at(b)]
    expect(second.x).toBeGreaterThan(first.x)
    expect(second.y).toBeLessThan(first.y)
    for (const { x, y } of [first, second]) {
      expect(x).toBeGreaterThanOrEqual(29.9)
      expect(x).toBeLessThanOrEqual(470.1)
      expect(y).toBeGreaterThanOrEqual(29.9)
      expect(y).toBeLessThanOrEqual(map.height - 29.9)
    }
  })
  test('is true to scale: a tenth of a degree north is 6.909 miles', () => {
    const map = fitMap([a, b], 500, heights, 30)
    const north = map.at(a).y - map.at({ ...a, latitude: 41.8 }).y
    expect(north * map.milesPerPixel).toBeCloseTo(6.909, 2)
    const east = map.at({ ...a, longitude: -88.4 }).x - map.at(a).x
    expect(east / north).toBeCloseTo(Math.cos((41.75 * Math.PI) / 180), 6)
  })
  test('a point of the sheet tells its place: there and back within a metre or so', () => {
    const map = fitMap([a, b], 500, heights, 30)
    for (const place of [a, b]) {
      const back = map.placeAt(map.at(place))
      expect(back.latitude).toBeCloseTo(place.latitude, 4)
      expect(back.longitude).toBeCloseTo(place.longitude, 4)
    }
  })
  test('one place alone stands in the middle', () => {
    const map = fitMap([a], 400, heights, 30)
    expect(map.at(a)).toEqual({ x: 200, y: map.height / 2 })
  })
})

test('the scale bar is a round length that fits', () => {
  expect(scaleBar(0.02, 120, 1)).toEqual({ length: 2, pixels: 100 })
  const metric = scaleBar(0.02, 120, 1 / 1.609344)
  expect(metric.length).toBe(2)
  expect(metric.pixels).toBeCloseTo(62.14, 1)
})

test('labels that would lie on each other are moved apart, others stay', () => {
  expect(
    spreadLabels(
      [
        { x: 10, y: 10 },
        { x: 12, y: 14 },
        { x: 300, y: 12 },
      ],
      80,
      18,
    ),
  ).toEqual([10, 28, 12])
})
