import { weekdayOf } from '@almanac/units/calendar/calendar-day'
import { describe, expect, test } from 'vitest'
import { crewHas, skillsLacking, skillsNeeded } from './crew-skills.ts'
import { crewWarnings, hoursOn } from './working-day.ts'

const all = { name: 'Ruth Ames', doesAll: true, skills: [] }
const light = { name: 'Callum Orr', doesAll: false, skills: ['valve:usual-meter'] }
const US = { locale: 'en-US' }
const valveName = () => 'Metered house valve'

describe('what a job asks of its crew', () => {
  test('a rebed by two asks for two who may lift, and for someone who knows the valve', () => {
    const needed = skillsNeeded({ kind: 'rebed', crewSize: 2, valveCardIds: ['usual-meter', 'usual-meter'] })
    expect(needed).toEqual(['lifting:2', 'valve:usual-meter'])
    expect(crewHas([all, light], 'lifting:2')).toBe(false)
    expect(crewHas([all, all], 'lifting:2')).toBe(true)
    expect(skillsLacking(needed, [all, light], valveName)).toBe('This crew isn’t cleared for heavy lifting by two.')
    expect(skillsLacking(needed, [all, all], valveName)).toBeNull()
  })
  test('an annual visit asks for nothing, an installation for a licence', () => {
    expect(skillsNeeded({ kind: 'annual-visit', crewSize: 1, valveCardIds: ['usual-meter'] })).toEqual([])
    expect(skillsNeeded({ kind: 'installation', crewSize: 1, valveCardIds: [] })).toEqual(['lifting', 'plumbing-licence'])
  })
})

describe('a crew’s day', () => {
  // 3 December 2026 is a Thursday; 1 January 2000 was a Saturday, 29 February 2024 a Thursday.
  test.each([
    ['2026-12-03', 4],
    ['2000-01-01', 6],
    ['2024-02-29', 4],
    ['1969-12-28', 7],
  ])('%s is weekday %i', (day, weekday) => expect(weekdayOf(day)).toBe(weekday))

  const ruth = { name: 'Ruth Ames', shifts: [{ weekday: 4, from: '09:00', until: '15:00' }], away: [] }
  const sheet = { day: '2026-12-03', from: '09:00', until: '15:00', vehicle: null }
  test('is told where it does not agree with its people and vehicle, and else not', () => {
    expect(crewWarnings({ ...sheet, people: [ruth] }, US)).toEqual([])
    expect(crewWarnings({ ...sheet, until: '16:00', people: [ruth] }, US)).toEqual([
      'Ruth Ames works from 9:00\u00a0AM to 3:00\u00a0PM on that day; the sheet runs from 9:00\u00a0AM to 4:00\u00a0PM.',
    ])
    expect(crewWarnings({ ...sheet, day: '2026-12-04', people: [ruth] }, US)).toEqual(['Ruth Ames does not work on Fridays.'])
    const away = [{ fromDay: '2026-12-01', untilDay: '2026-12-03', word: 'holiday' }]
    expect(crewWarnings({ ...sheet, people: [{ ...ruth, away }] }, US)).toEqual(['Ruth Ames is off: holiday, until Thu, Dec 3.'])
    const van = { name: 'van 2', away: [{ fromDay: '2026-12-03', untilDay: null, word: null }] }
    expect(crewWarnings({ ...sheet, people: [], vehicle: van }, US)).toEqual(['van 2 is out of service: until further notice.'])
  })
  test('has no hours of its own where none are written down', () => expect(hoursOn({ shifts: [] }, '2026-12-03')).toBeNull())
})
