import { expect, test } from 'vitest'
import { spreadTurns, type TurnToPlace } from './spread-turns.ts'

const may = (month: string): string[] => {
  const number = Number(month.slice(5))
  return [number - 1, number, number + 1].map((one) => `2027-${String(one).padStart(2, '0')}`)
}
const turn = (key: string, month: string, hours: number, months = may(month)): TurnToPlace => ({ key, month, months, hours })
const free = (hours: Record<string, number>) => new Map(Object.entries(hours))

test('each turn stays in its own month while that has the hours', () => {
  const placed = spreadTurns([turn('a', '2027-06', 1), turn('b', '2027-06', 1)], free({ '2027-05': 9, '2027-06': 2, '2027-07': 9 }))
  expect([...placed.values()]).toEqual([
    { month: '2027-06', fits: true },
    { month: '2027-06', fits: true },
  ])
})

test('what no longer fits goes where the crews have the most hours left, the earliest of equals', () => {
  // By hand: June takes a; b goes to July (5 left against 3); July then has 4; c goes to July; d to July or May, both 3: May.
  const turns = ['a', 'b', 'c', 'd'].map((key) => turn(key, '2027-06', 1))
  const placed = spreadTurns(turns, free({ '2027-05': 3, '2027-06': 1, '2027-07': 5 }))
  expect(['a', 'b', 'c', 'd'].map((key) => placed.get(key)?.month)).toEqual(['2027-06', '2027-07', '2027-07', '2027-05'])
})

test('salt, which cannot wait, has its month before visits that can move', () => {
  const placed = spreadTurns([turn('a visit', '2027-06', 1), turn('salt', '2027-06', 1, ['2027-06'])], free({ '2027-06': 1, '2027-07': 1 }))
  expect(placed.get('salt')).toEqual({ month: '2027-06', fits: true })
  expect(placed.get('a visit')).toEqual({ month: '2027-07', fits: true })
})

test('where no month has the hours it stays in its own, and says so', () => {
  const placed = spreadTurns([turn('a', '2027-06', 2)], free({ '2027-05': 1, '2027-06': 0, '2027-07': 1.5 }))
  expect(placed.get('a')).toEqual({ month: '2027-06', fits: false })
})

test('a turn whose own month is over goes into the first that is left', () => {
  expect(spreadTurns([turn('a', '2027-05', 1, ['2027-06'])], free({ '2027-06': 4 })).get('a')).toEqual({ month: '2027-06', fits: true })
})
