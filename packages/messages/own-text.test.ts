import { describe, expect, test } from 'vitest'
import { checkOwnText, fillOwnText } from './own-text.ts'

const KNOWN = ['name', 'phone', 'notice', 'answer_link']
const check = (text: string, needed?: string) => checkOwnText(text, KNOWN, needed)

describe('a company’s own text', () => {
  test('is filled in, with choices by what is known', () => {
    const text =
      '{% if name %}Dear {{ name }},{% else %}Hello,{% endif %} {{ phone | default: "call us" }}{% unless notice > 1 %}!{% endunless %}'
    expect(check(text)).toBeNull()
    expect(fillOwnText(text, { name: 'Hanna', phone: null, notice: 1, answer_link: null })).toEqual({
      ok: true,
      text: 'Dear Hanna, call us!',
    })
    expect(fillOwnText(text, { name: null, phone: '555', notice: 2, answer_link: null })).toEqual({ ok: true, text: 'Hello, 555' })
  })

  test('takes what somebody is called as it is, however it looks', () => {
    const name = '{{ phone }}{% if name %}<b>&amp;"\n'
    expect(fillOwnText('{{ name }}', { name })).toEqual({ ok: true, text: name })
  })

  test.each([
    ['one\n{{ nmae }}', 'There’s no “nmae” to fill in (line 2). Use one of: name, phone, notice, answer_link.'],
    ['{% if phne %}x{% endif %}', 'There’s no “phne” to fill in (line 1)'],
    ['{{ constructor }}', 'There’s no “constructor”'],
    ['{{ __proto__ }}', 'There’s no “__proto__”'],
    ['one\ntwo {{ name', 'We can’t read line 2: a “{{” is never closed'],
    ['{% if name %}x', 'We can’t read line 1: a “{%” is never closed or never ended'],
    ['{% if name', 'We can’t read line 1: a “{%” is never closed or never ended'],
    ['{{ name | shout }}', 'We can’t read line 1: “| shout” can’t be used here'],
    ['{% for i in (1..9) %}x{% endfor %}', '“for” can’t be used here; only if, unless and case can'],
    ['{% include "/etc/passwd" %}', '“include” can’t be used here'],
    ['{% render "a" %}', '“render” can’t be used here'],
    ['{% layout "a" %}', '“layout” can’t be used here'],
    ['{% assign name = "x" %}', '“assign” can’t be used here'],
    ['{% liquid assign a = 1 %}', '“liquid” can’t be used here'],
    ['{% raw %}', '“raw” can’t be used here'],
    ['{% endif %}', 'We can’t read line 1'],
    ['x'.repeat(10_001), 'it’s too long; shorten it'],
  ])('%j: %s', (text, said) => {
    expect(check(text)).toContain(said)
  })

  test('must let its reader answer, where it has to', () => {
    expect(check('Dear {{ name }}', 'answer_link')).toBe(
      'Keep {{ answer_link }} in the text: it’s how customers answer, and stop reminders.',
    )
    expect(check('{{ answer_link }}', 'answer_link')).toBeNull()
  })

  test('reaches no more than its values', () => {
    for (const text of ['{{ name.constructor.constructor }}', '{{ name.toString }}', '{{ name["__proto__"] }}'])
      expect(fillOwnText(text, { name: 'Hanna' })).not.toMatchObject({ text: expect.stringMatching(/function|object/i) })
  })

  test('that grows without bound is refused', () => {
    const filled = fillOwnText('{{ name }}'.repeat(500), { name: 'x'.repeat(500) })
    expect(filled.ok).toBe(false)
  })
})
