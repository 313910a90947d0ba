import { describe, expect, test } from 'vitest'
import { readRow } from './read-row.ts'

const MAPPING = {
  header: ['Name', 'Installed', 'Rebedded', 'Notes'],
  columns: [
    { column: 0, field: 'customerName' as const },
    { column: 1, field: 'installed' as const },
    { column: 2, field: 'bedBegan' as const },
    { column: 3, field: 'notes' as const },
  ],
}
const read = (installed: string, rebedded: string, notes: string) => {
  const reading = readRow(['Ann Poe', installed, rebedded, notes], MAPPING, { today: '2026-12-02', display: { locale: 'en-US' } })
  if (!reading.ok) return expect.unreachable()
  const { began, earlier } = reading.record.bed
  const year = (day: { earliestDay: string; latestDay: string } | null | undefined) => day && `${day.earliestDay}/${day.latestDay}`
  return {
    began: year(began),
    earlier: earlier.map((bed) => [year(bed.began), year(bed.ended), bed.cause]),
    said: reading.assumptions.map((one) => one.sentence),
  }
}
const [Y2004, Y2012, Y2018] = ['2004-01-01/2004-12-31', '2012-01-01/2012-12-31', '2018-01-01/2018-12-31']

describe('the beds before the present one', () => {
  test('"rebed 2012, rebed 2018 (failed, beads)" gives two ended beds with their causes and dates', () => {
    const { began, earlier, said } = read('2004', '', 'rebed 2012, rebed 2018 (failed, beads)')
    expect(began).toBe(Y2018)
    expect(earlier).toEqual([
      [Y2004, Y2012, 'unknown'],
      [Y2012, Y2018, 'beads-lost'],
    ])
    expect(said).toContain('An earlier rebed was taken from the notes: "rebed 2012".')
    expect(said).toContain('Why the bed before "rebed 2018" ended was taken from the notes: beads lost (broken distributor).')
    // Nobody says when the first one went in: it ended in 2012 all the same.
    expect(read('', '', 'rebed 2012, rebed 2018 (failed, beads)').earlier).toEqual([
      [null, Y2012, 'unknown'],
      [Y2012, Y2018, 'beads-lost'],
    ])
  })

  test('are told by the notes beside a column for the resin, too, and one rebed without a reason needs the installation', () => {
    expect(read('', '2018', 'rebed 2012; rebed 2018 (iron)').earlier).toEqual([
      [null, Y2012, 'unknown'],
      [Y2012, Y2018, 'iron-fouled'],
    ])
    expect(read('2004', '', 'rebed 2018').earlier).toEqual([[Y2004, Y2018, 'unknown']])
    expect(read('', '', 'rebed 2018').earlier).toEqual([])
    expect(read('', '', 'rebed 2018 because of worn resin').earlier).toEqual([[null, Y2018, 'worn']])
    expect(read('2004', '', 'rebed 2012 and 2018 (failed)').earlier).toEqual([
      [Y2004, Y2012, 'unknown'],
      [Y2012, Y2018, 'worn'],
    ])
  })

  test('are none where the resin is as old as the softener, or a rebed was only quoted', () => {
    expect(read('2004', '', '').earlier).toEqual([])
    expect(read('2004', '', 'rebed quoted 2018').earlier).toEqual([])
    // Of the softener that stood there before.
    expect(read('2014', '', 'rebed 2012, rebed 2018').earlier).toEqual([['2014-01-01/2014-12-31', Y2018, 'unknown']])
  })
})
