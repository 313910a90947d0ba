import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { setClock } from '@almanac/runtime/clock'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, makeFirm, prepare, rowsOf, stateOf } from './test-import.ts'

const LIST = `Name,Street,Tank,Installed,Last seen,Hardness (gpg)
Ann Poe,1 Elm St,10x54,2009,,18
Bo Dow,2 Elm St,10x54,2012,2025-05-03,22
Cy Roe,3 Elm St,9x48,2026-08-01,,
Di Fay,4 Elm St,9x48,,,15
`
const RIGHT_ON = '2026-03-31'

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

const byStreet = async (firm: Awaited<ReturnType<typeof makeFirm>>) => {
  const { sites, softeners, tanks, beds, tests } = await stateOf(firm)
  return sites
    .toSorted((a, b) => (a.street ?? '').localeCompare(b.street ?? ''))
    .map((site) => {
      const softener = softeners.find((one) => one.siteId === site.id)
      const tank = tanks.find((one) => one.softenerId === softener?.id)
      const bed = beds.find((one) => one.tankId === tank?.id)
      const tested = tests.find((one) => one.softenerId === softener?.id)
      const sources = (bed?.factSources ?? {}) as Record<string, string>
      return { seen: dayOf(bed?.lastSeenDay ?? null), source: sources.lastSeenDay ?? null, tested: dayOf(tested?.day ?? null) }
    })
}

describe('the day a list was last right', () => {
  test('counts for every bed that no cell was seen by and that was there by then, with where it is from; readings are as old as the list', async () => {
    const firm = await makeFirm()
    const { done } = await bringIn(firm, LIST, 'list.csv', RIGHT_ON)
    // Cy Roe's went in after that day, so nothing is known of it.
    expect(done).toMatchObject({ created: 4, unseen: 1 })
    expect(await byStreet(firm)).toEqual([
      { seen: RIGHT_ON, source: `import list.csv, last right ${RIGHT_ON}`, tested: RIGHT_ON },
      { seen: '2025-05-03', source: 'import list.csv line 3', tested: '2025-05-03' },
      { seen: null, source: null, tested: null },
      { seen: RIGHT_ON, source: `import list.csv, last right ${RIGHT_ON}`, tested: RIGHT_ON },
    ])
  })

  test('that nobody knows leaves them unseen, and no reading is of today', async () => {
    const firm = await makeFirm()
    const { done } = await bringIn(firm, LIST)
    expect(done).toMatchObject({ created: 4, unseen: 3 })
    // A reading is as old as the last visit, else as the softener.
    expect((await byStreet(firm)).map((one) => [one.seen, one.tested])).toEqual([
      [null, '2009-12-31'],
      ['2025-05-03', '2025-05-03'],
      [null, null],
      [null, expect.any(String)],
    ])
  })

  test('said later, by the same list again, is taken; an older day moves nothing back', async () => {
    const firm = await makeFirm()
    await bringIn(firm, LIST)
    await bringIn(firm, LIST, 'list.csv', RIGHT_ON)
    expect((await byStreet(firm)).map((one) => one.seen)).toEqual([RIGHT_ON, '2025-05-03', null, RIGHT_ON])
    const again = await bringIn(firm, LIST, 'list.csv', '2020-01-01')
    expect((await rowsOf(firm, again.batchId)).map((row) => row.notes)).toEqual([[], [], [], []])
    expect(again.done).toMatchObject({ updated: 0 })
    expect((await byStreet(firm)).map((one) => one.seen)).toEqual([RIGHT_ON, '2025-05-03', null, RIGHT_ON])
  })

  test('is refused where it has not come yet', async () => {
    const firm = await makeFirm()
    await expect(prepare(firm, LIST, 'list.csv', '2027-01-01')).rejects.toMatchObject({
      message: expect.stringMatching(/lies in the future\. Nothing was checked/),
    })
  })
})
