'use client'
import type { TestRow } from '@almanac/contract/water'
import { Button } from '@almanac/ui/button'
import { ChoiceGroup } from '@almanac/ui/choice-group'
import { DataTable } from '@almanac/ui/data-table'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { type TestPoint, TestsOverTime } from '@almanac/ui/tests-over-time'
import type { AmountDisplay } from '@almanac/units/display'
import { formatHardnessGpg } from '@almanac/units/format'
import { gpgToMgL } from '@almanac/units/hardness'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const DRAWN = { raw: 'raw', 'softener-inlet': 'softener inlet', softened: 'softened' } as const

type Quantity = 'hardness' | 'free' | 'total' | 'iron'
const QUANTITIES: { value: Quantity; label: string; key: keyof TestRow; limit?: { value: number; label: string } }[] = [
  { value: 'hardness', label: 'Hardness', key: 'hardnessGpg' },
  { value: 'free', label: 'Free chlorine', key: 'freeChlorineMgL' },
  { value: 'total', label: 'Total chlorine', key: 'totalChlorineMgL' },
  { value: 'iron', label: 'Iron', key: 'ironMgL', limit: { value: 0.3, label: 'EPA secondary limit 0.3 mg/L' } },
]

const mgL = (value: number | null) => (value === null ? null : `${Number(value.toPrecision(3))} mg/L`)

/** A test's values as one line: "12 gpg, free chlorine 0.8 mg/L". */
function valueWords(test: TestRow, display: AmountDisplay): string {
  const named: [string, string | null][] = [
    ['free chlorine', mgL(test.freeChlorineMgL)],
    ['total chlorine', mgL(test.totalChlorineMgL)],
    ['iron', mgL(test.ironMgL)],
    ['manganese', mgL(test.manganeseMgL)],
    ['pH', test.ph === null ? null : String(test.ph)],
  ]
  const hardness = test.hardnessGpg === null ? [] : [formatHardnessGpg(test.hardnessGpg, display)]
  return [...hardness, ...named.flatMap(([name, words]) => (words === null ? [] : [`${name} ${words}`]))].join(', ')
}

function pointsOf(tests: readonly TestRow[], quantity: (typeof QUANTITIES)[number], display: AmountDisplay): TestPoint[] {
  return tests.flatMap((test) => {
    const value = test[quantity.key]
    if (typeof value !== 'number') return []
    const shown =
      quantity.value === 'hardness' && display.unitSystem === 'metric' ? Math.round(gpgToMgL(value)) : Number(value.toPrecision(3))
    return [{ day: test.day, value: shown, point: DRAWN[test.point] }]
  })
}

/** What was measured at the site over the years, one quantity at a time; a test entered by mistake can be withdrawn. */
export function WaterTests({ siteId, mayChange }: { siteId: string; mayChange: boolean }) {
  const { api, me } = useSession()
  const [chosen, setChosen] = useState<Quantity | null>(null)
  const water = useQuery(api.water.site.queryOptions({ input: { siteId } }))
  const withdraw = useCommand(api.water.withdrawTest.mutationOptions())
  const failure = water.error ?? withdraw.error
  if (failure) return <Problem happened={readFailure(failure).message} onRetry={() => void water.refetch()} retrying={water.isFetching} />
  if (!water.data) return <Skeleton lines={6} label="Loading the water tests" />
  const { tests } = water.data
  const display = me.company
  const measured = QUANTITIES.filter((one) => tests.some((test) => test[one.key] !== null))
  const quantity = measured.find((one) => one.value === chosen) ?? measured[0]
  if (!quantity)
    return (
      <p className="text-soft">No water test of this site yet. A hardness and chlorine test at the softener inlet narrows the forecast.</p>
    )
  const unit = quantity.value === 'hardness' && display.unitSystem === 'us' ? 'gpg' : 'mg/L'
  return (
    <>
      {measured.length > 1 ? (
        <ChoiceGroup
          label="What to show"
          inline
          name="water-quantity"
          choices={measured.map(({ value, label }) => ({ value, label }))}
          value={quantity.value}
          onChange={(value) => setChosen(value as Quantity)}
        />
      ) : null}
      <TestsOverTime title={quantity.label} unit={unit} tests={pointsOf(tests, quantity, display)} limit={quantity.limit} />
      <details className="mt-3">
        <summary className="cursor-pointer">
          {tests.length === 1 ? 'The test' : `All ${tests.length} tests`} in full, or withdraw one
        </summary>
        <DataTable
          caption="Water tests of this site"
          rows={tests}
          rowKey={(test) => test.id}
          columns={[
            { key: 'day', head: 'Day', phone: 'title', cell: (test) => test.day },
            { key: 'drawn', head: 'Drawn', cell: (test) => DRAWN[test.point] },
            { key: 'found', head: 'Found', cell: (test) => valueWords(test, display) },
            {
              key: 'withdraw',
              head: <span className="sr-only">Action</span>,
              align: 'right',
              cell: (test) =>
                mayChange ? (
                  <Button
                    kind="quiet"
                    busy={withdraw.isPending && withdraw.variables?.id === test.id}
                    onClick={() => withdraw.send({ id: test.id, version: test.version })}
                  >
                    Withdraw<span className="sr-only"> the test of {test.day}</span>
                  </Button>
                ) : null,
            },
          ]}
        />
      </details>
    </>
  )
}
