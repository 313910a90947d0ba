import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test, vi } from 'vitest'
import { OwnerMeasure } from './owner-measure.tsx'
import type { ShownGuide } from './shown-guide.ts'

vi.mock('next/navigation', () => ({ useRouter: () => ({ refresh: () => {} }) }))

const guide: ShownGuide = {
  ...{ companyName: 'Larkmoor Soft Water', telephone: '(555) 010-1200', locale: 'en-US', unitSystem: 'us', open: true },
  ...{ entries: [], sendTo: '/api/measure/x', state: 'measuring', photographs: [], step: null, toFix: null, left: null, ended: null },
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

const step: NonNullable<ShownGuide['step']> = {
  ...{ id: 'cap-out', title: 'Take the cap out, count it', dose: null, text: 'Hold it in your hand.', minutes: 2, waitMinutes: null },
  cautions: [{ kind: 'water', text: 'A cap left in shuts the water off.' }],
  asks: [{ id: 'cap-out', label: 'Cap out, in hand', kind: 'confirm', unit: null, amount: null, choices: [], required: true }],
  ...{ hold: null, number: 18, total: 27, now: true, before: 'pour-resin' },
}
const page = (more: Partial<ShownGuide>, said?: string) => renderToStaticMarkup(<OwnerMeasure guide={{ ...guide, ...more }} said={said} />)

describe('the page of an owner who rebeds step by step', () => {
  test('shows one step, its caution before what to do, and goes on only by a form', () => {
    const shown = text({ state: 'working', step })
    expect(shown).toMatch(/Step 18 of 27 .*Water\. A cap left in .*Take the cap out, count it .*Cap out, in hand .*Done, next step/)
    expect(page({ state: 'working', step })).toContain('action="/api/measure/x/act" method="post"')
    expect(text({ state: 'working', step: { ...step, now: false } })).not.toContain('Done, next step')
  })
  test('at a hold point has a form for the photo and no way on; looked at, it waits; to fix, it says what', () => {
    const holding = page({ state: 'holding', step: { ...step, hold: 'cap' } })
    expect(holding).toContain('action="/api/measure/x/photograph"')
    expect(holding).not.toContain('value="next"')
    const looking = text({ state: 'looking', step: { ...step, hold: 'cap' } })
    expect(looking).toContain('We’re looking at it now: don’t open the water.')
    expect(looking).not.toContain('Done, next step')
    expect(text({ state: 'holding', step: { ...step, hold: 'cap' }, toFix: '<b>closer</b>' })).toContain('fix this first: &lt;b&gt;closer')
  })
  test('can become a visit until it is done, and then says what to leave as it is and whom to call', () => {
    for (const state of ['measuring', 'working', 'holding', 'looking', 'asked', 'trouble'] as const)
      expect(page({ state, ...(['working', 'holding', 'looking'].includes(state) ? { step } : {}) })).toContain('value="visit"')
    const visit = text({ state: 'visit', left: { opening: 'open', heaterOff: true } })
    expect(visit).toMatch(/Stop here\. We’ll come\. .*Don’t open the water to it.*heater is still off.*\(555\) 010-1200/)
    for (const state of ['soft', 'visit'] as const) expect(page({ state })).not.toContain('<form')
  })
  test('asks how the water is, and with beads at the taps says what to do at once', () => {
    expect(text({ state: 'asked' })).toMatch(/How is the water\? .*Soft .*Still hard .*Small beads/)
    expect(text({ state: 'trouble', ended: 'beads' })).toMatch(/bypass now\. Use no hot water/)
    expect(text({ state: 'asked', locale: 'es-US' })).toContain('¿Cómo está el agua?')
  })
  test('says what was wrong with a photo, and that nothing was saved', () => {
    for (const said of ['no-picture', 'too-large', 'too-many']) expect(text({}, 'photographs', said)).toContain('Nothing was saved.')
    expect(text({ photographs: ['label'] }, 'photographs')).toContain('We have the label.')
  })
})
