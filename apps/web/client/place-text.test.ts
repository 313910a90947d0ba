import { expect, test } from 'vitest'
import { placeWords, readPlace } from './place-text.ts'

test.each(['41.7106, -88.4215', '41.7106,-88.4215', '41.7106 -88.4215', '41.7106; -88.4215', '41.7106 N, 88.4215 W'])(
  '%s is read',
  (text) => {
    expect(readPlace(text)).toEqual({ ok: true, value: { latitude: 41.7106, longitude: -88.4215 } })
  },
)
test('what is shown is read back, and nothing is no place', () => {
  const place = { latitude: -33.86, longitude: 151.2 }
  expect(readPlace(placeWords(place))).toEqual({ ok: true, value: place })
  expect(readPlace(placeWords(null))).toEqual({ ok: true, value: null })
})
test.each(['41.7106', 'behind the mill', '200, 3.5', '1, 2, 3'])('%j is refused with a sentence', (text) => {
  expect(readPlace(text)).toMatchObject({ ok: false, reason: expect.stringMatching(/\.$/) })
})
