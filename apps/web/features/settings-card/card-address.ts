'use client'
import { DEMAND_CURVES, type DemandCurveId } from '@almanac/softener/flow/demand-curves'
import { FIXTURES, type FixtureCounts, MOST_FIXTURES } from '@almanac/softener/flow/fixture-units'
import { readNumber } from '@almanac/units/read-number'
import { usePathname, useSearchParams } from 'next/navigation'
import { AS_RECORDED, type CardChanges } from '@/client/settings-card/card-changes'

const number = (text: string | null) => readNumber(text ?? '')

/** `bathroom-group.2_dishwasher.1`; anything else in it is left out. */
function readFixtures(text: string | null): FixtureCounts | null {
  if (text === null) return null
  const counts: FixtureCounts = {}
  for (const part of text.split('_')) {
    const [id, count] = part.split('.')
    const fixture = FIXTURES.find((one) => one.id === id)
    const whole = readNumber(count ?? '')
    if (fixture && whole !== null && Number.isInteger(whole) && whole > 0 && whole <= MOST_FIXTURES) counts[fixture.id] = whole
  }
  return counts
}

const fixturesText = (counts: FixtureCounts) =>
  FIXTURES.flatMap(({ id }) => (counts[id] ? [`${id}.${counts[id]}`] : [])).join('_') || 'none'

function readChanges(search: URLSearchParams): CardChanges {
  const curve = search.get('curve') ?? ''
  const control = search.get('control')
  return {
    people: number(search.get('people')),
    hardnessGpg: number(search.get('hardness')),
    coldestF: number(search.get('cold')),
    warmestF: number(search.get('warm')),
    fixtures: readFixtures(search.get('fixtures')),
    curve: curve in DEMAND_CURVES ? (curve as DemandCurveId) : AS_RECORDED.curve,
    model: search.get('model') === 'richardson-zaki' ? 'richardson-zaki' : AS_RECORDED.model,
    salt: search.get('salt') === 'KCl' ? 'KCl' : AS_RECORDED.salt,
    control: control === 'meter' || control === 'timer' ? control : null,
    doseLbFt3: number(search.get('dose')),
  }
}

function writeChanges(changes: CardChanges): string {
  const next = new URLSearchParams()
  const put = (key: string, value: number | string | null) => {
    if (value !== null && value !== '') next.set(key, typeof value === 'number' ? String(Number(value.toFixed(4))) : value)
  }
  put('people', changes.people)
  put('hardness', changes.hardnessGpg)
  put('cold', changes.coldestF)
  put('warm', changes.warmestF)
  if (changes.fixtures) put('fixtures', fixturesText(changes.fixtures))
  if (changes.curve !== AS_RECORDED.curve) put('curve', changes.curve)
  if (changes.model !== AS_RECORDED.model) put('model', changes.model)
  if (changes.salt !== AS_RECORDED.salt) put('salt', changes.salt)
  put('control', changes.control)
  put('dose', changes.doseLbFt3)
  return next.toString()
}

/** The changes in the address, and how to make more; the page is not loaded again for them. */
export function useCardChanges(): [CardChanges, (change: Partial<CardChanges>) => void] {
  const search = useSearchParams()
  const path = usePathname()
  const changes = readChanges(new URLSearchParams(search))
  return [
    changes,
    (change) => {
      const text = writeChanges({ ...readChanges(new URLSearchParams(window.location.search)), ...change })
      window.history.replaceState(null, '', text ? `${path}?${text}` : path)
    },
  ]
}
