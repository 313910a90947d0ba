import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { OwnerMeasure, type ShownGuide } from './owner-measure.tsx'

const guide: ShownGuide = {
  ...{ companyName: 'Larkmoor Soft Water', telephone: '(555) 010-1200', locale: 'en-US', unitSystem: 'us', open: true },
  ...{ entries: [], sendTo: '/api/measure/x' },
}
const text = (more: Partial<ShownGuide>, step?: string, said?: string) =>
  renderToStaticMarkup(<OwnerMeasure guide={{ ...guide, ...more }} step={step} said={said} />)
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&nbsp;', ' ')
    .replace(/\s+/g, ' ')

describe('the page of an owner with a tape', () => {
  test('asks first around, then for the height, and shows what was sent', () => {
    expect(text({})).toMatch(/First, around the tank .* measure here, all the way around/)
    // 31.5 in around are 10.03 in across: 31.5 / 3.1416.
    const around = { measure: 'around' as const, valueIn: 31.5 }
    expect(text({ entries: [around] })).toMatch(/Now, how tall it is .* Around the tank: 31½ in\. That makes it about 10 in across\./)
    const all = text({ entries: [around, { measure: 'height', valueIn: 48 }] })
    expect(all).toMatch(/Thank you .* Height: 48 in\./)
    expect(all).not.toContain('measure here')
  })
  test('says in the company’s units what was measured, and speaks Spanish', () => {
    const metric = { unitSystem: 'metric' as const, locale: 'es-US', entries: [{ measure: 'height' as const, valueIn: 48 }] }
    // 48 in are 121.9 cm.
    expect(text(metric, 'end')).toMatch(/Gracias .*Altura: 121[.,]9 cm/)
    expect(text(metric)).toContain('Primero, alrededor del tanque')
  })
  test('says what was wrong with what was typed, and that nothing was saved', () => {
    expect(text({}, 'around', 'unread')).toContain('We couldn’t read that. Nothing was saved.')
    expect(text({}, 'height', 'impossible')).toContain('That’s not the size of a tank. Nothing was saved.')
  })
  test('of a link that ended shows no form, and whom to call', () => {
    const gone = renderToStaticMarkup(<OwnerMeasure guide={{ ...guide, open: false }} />)
    expect(gone).toContain('Please call (555) 010-1200')
    expect(gone).not.toContain('<form')
  })
  test('what is typed and named is escaped', () => {
    const page = renderToStaticMarkup(<OwnerMeasure guide={{ ...guide, companyName: '<b>Soft & Sons</b>' }} step="<b>" />)
    expect(page).toContain('&lt;b&gt;Soft &amp; Sons')
    expect(page).not.toContain('<b>')
  })
})
