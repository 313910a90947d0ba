import { describe, expect, test } from 'vitest'
import { normaliseName, normalisePhone, normalisePostcode, normaliseStreet } from './normalise.ts'
import { readConsent, readEmail, readPhones } from './read-contact.ts'

describe('the same street', () => {
  test.each([
    ['14 Orchard Ln.', 'Orchard Lane 14'],
    ['14 ORCHARD LANE', '14 orchard ln'],
    ["14 St. Mary's St", '14 Saint Marys Street'],
    ['9 N. Elm Ave Apt 2', '9 North Elm Avenue #2'],
    ['Goethestr. 5', 'Goethestraße 5'],
    ['12a Mill Rd', 'Mill Road 12A'],
  ])('%j and %j', (one, other) => expect(normaliseStreet(one)).toBe(normaliseStreet(other)))
})

describe('another street', () => {
  test.each([
    ['14 Orchard Lane', '41 Orchard Lane'],
    ['14 Orchard Lane', '14 Orchard Road'],
    ['14 Elm St Apt 2', '2 Elm St Apt 14'],
    ['14 Elm St Apt 2', '14 Elm St Apt 3'],
    ['Route 9', '9 Route'],
  ])('%j and %j', (one, other) => expect(normaliseStreet(one)).not.toBe(normaliseStreet(other)))
})

describe('names, phones, postcodes', () => {
  test.each([
    ['Smith, John', 'John  SMITH'],
    ['Mr. John Smith', 'john smith'],
    ['José Peña', 'Jose Pena'],
    ["O'Brien & Sons", 'OBrien and sons'],
    ['Mill-Bakery', 'Mill Bakery'],
  ])('%j and %j are one name', (one, other) => expect(normaliseName(one)).toBe(normaliseName(other)))

  test('a name that is only a title is kept', () => expect(normaliseName('Dr.')).toBe('dr'))
  test('two people stay two', () => expect(normaliseName('John James')).not.toBe(normaliseName('James John')))
  test('country code and extension make no difference', () => {
    expect(normalisePhone('+44 (0)1632 960123')).toBe(normalisePhone('01632-960123 ext 4'))
    expect(normalisePhone('1-555-010-4477')).toBe(normalisePhone('(555) 010 4477'))
  })
  test('postcodes', () => {
    expect(normalisePostcode('sw1a 1aa')).toBe(normalisePostcode('SW1A1AA'))
    expect(normalisePostcode('12345-6789')).toBe('12345')
  })
})

describe('contacts', () => {
  test.each([
    ['555-010-4477', '555-010-4477'],
    ['tel: (555) 010-4477', '(555) 010-4477'],
    ['555 010 4477 (cell)', '555 010 4477'],
    ['5550104477 x12', '5550104477 x12'],
    ['555-0142 / 555-0199', '555-0142', '555-0199'],
    ['555-0142 or (555) 010-4477 cell', '555-0142', '(555) 010-4477'],
    ['555-0142, ask for Bo', '555-0142'],
    ['+44 1632 960123', '+44 1632 960123'],
    ['12345', null],
    ['call her sister', null],
    ['2016', null],
    ['1234567890123456', null],
    ['5550142abc', null],
  ])('phone %j', (text, ...phones) => {
    const reading = readPhones(text)
    expect(reading.ok ? reading.value : [null]).toEqual(phones)
  })

  test.each([
    ['a@b.com', 'a@b.com'],
    ['mailto:a@b.co.uk', 'a@b.co.uk'],
    ['a@b.com; c@d.com', 'a@b.com'],
    ['Ann <a@b.com>', 'a@b.com'],
    ['a@b', null],
    ['a b.com', null],
    ['@b.com', null],
    ['a@@b.com', null],
  ])('e-mail %j', (text, email) => {
    const reading = readEmail(text)
    expect(reading.ok ? reading.value : null).toBe(email)
  })

  const all = (value: boolean) => ({ email: value, phone: value, text: value, letter: value })
  test.each([
    ['yes', all(true)],
    ['N', all(false)],
    ['do not contact', all(false)],
    ['e-mail only', { email: true, phone: false, text: false, letter: false }],
    ['email + phone', { email: true, phone: true, text: null, letter: null }],
    ['no calls', { email: null, phone: false, text: null, letter: null }],
    ['mail', { email: null, phone: null, text: null, letter: true }],
    ['email', { email: true, phone: null, text: null, letter: null }],
    ['maybe', null],
    ['no calls but email ok', null],
  ])('consent %j', (text, consent) => {
    const reading = readConsent(text)
    expect(reading.ok ? reading.value : null).toEqual(consent)
  })
})
