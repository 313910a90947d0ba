import { expect, test } from 'vitest'
import { deviceOf } from './device.ts'

// What these browsers send, as their makers document it (developer.chrome.com on the reduced User-Agent; MDN on Firefox; webkit.org).
test.each([
  [
    'Mozilla/5.0 (Windows NT 10.0; Win64; x64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Safari/537.36',
    'computer',
    'Chrome',
    'Windows',
  ],
  [
    'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Mobile Safari/537.36',
    'phone',
    'Chrome',
    'Android',
  ],
  [
    'Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0.0.0 Safari/537.36',
    'tablet',
    'Chrome',
    'Android',
  ],
  [
    'Mozilla/5.0 (iPad; CPU OS 17_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/17.5 Mobile/15E148 Safari/604.1',
    'tablet',
    'Safari',
    'iOS',
  ],
  ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:140.0) Gecko/20100101 Firefox/140.0', 'computer', 'Firefox', 'macOS'],
])('%s', (userAgent, kind, browser, system) => {
  expect(deviceOf(userAgent)).toEqual({ kind, browser, system })
})

test.each([[null], [''], ['curl/8.5.0'], ['\u0000'.repeat(5000)]])('%j says nothing, and breaks nothing', (userAgent) => {
  expect(deviceOf(userAgent)).toMatchObject({ kind: null })
})
