import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import { type ArrivalOffer, ChooseArrival } from './choose-arrival.tsx'

// 3 December 2026 is a Thursday; 15:10 UTC is 8:10 in Phoenix, UTC-7 all year. The styles are CLDR's of each locale.
const offer: ArrivalOffer = {
  ...{ companyName: 'Larkmoor Water', telephone: null, timeZone: 'America/Phoenix', kind: 'rebed', place: 'Orchard Lane 14' },
  ...{ state: 'open', expiresAt: '2026-12-01T20:00:00Z', chosen: null, sendTo: '/send', calendar: '/calendar', locale: 'en-US' },
  windows: [{ visitId: 'one', from: '2026-12-03T15:10:00Z', until: '2026-12-03T17:10:00Z' }],
}

test.each([
  ['en-US', 'Thursday, December 3', '8:10\u00a0AM', '1:00\u00a0PM'],
  ['en-GB', 'Thursday 3 December', '08:10', '13:00'],
  ['es-US', 'jueves, 3 de diciembre', '8:10\u00a0a.m.', '1:00\u00a0p.m.'],
])('in %s the page of times says %s and %s', (locale, ...said) => {
  const page = renderToStaticMarkup(<ChooseArrival offer={{ ...offer, locale }} />)
  for (const words of said) expect(page).toContain(words)
})
