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
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'
import { gpgToMgL } from '@almanac/units/hardness'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

type Quantity = 'hardness' | 'free' | 'total' | 'iron'
const QUANTITIES: { value: Quantity; key: keyof TestRow }[] = [
  { value: 'hardness', key: 'hardnessGpg' },
  { value: 'free', key: 'freeChlorineMgL' },
  { value: 'total', key: 'totalChlorineMgL' },
  { value: 'iron', key: 'ironMgL' },
]
/** EPA secondary standard for iron, 40 CFR 143.3, mg/L. */
const IRON_LIMIT_MG_L = 0.3

const mgL = (value: number, display: AmountDisplay) => `${showNumber(Number(value.toPrecision(3)), 6, display)} mg/L`

/** A test's values as one line: "12 gpg, free chlorine 0.8 mg/L". */
function valueWords(test: TestRow, display: AmountDisplay, words: Words<'site'>): string {
  const named = [
    ['valued/free', test.freeChlorineMgL],
    ['valued/total', test.totalChlorineMgL],
    ['valued/iron', test.ironMgL],
    ['valued/manganese', test.manganeseMgL],
  ] as const
  const hardness = test.hardnessGpg === null ? [] : [formatHardnessGpg(test.hardnessGpg, display)]
  const ph = test.ph === null ? [] : [`pH ${showNumber(test.ph, 2, display)}`]
  return [
    ...hardness,
    ...named.flatMap(([key, value]) => (value === null ? [] : [words(key, { value: mgL(value, display) })])),
    ...ph,
  ].join(', ')
}

function pointsOf(tests: readonly TestRow[], quantity: (typeof QUANTITIES)[number], display: AmountDisplay): TestPoint[] {
  return tests.flatMap((test) => {
    const value = test[quantity.key]
    if (typeof value !== 'number') return []
    const shown =
      quantity.value === 'hardness' && display.unitSystem === 'metric' ? Math.round(gpgToMgL(value)) : Number(value.toPrecision(3))
    return [{ day: test.day, value: shown, point: test.point }]
  })
}

/** What was measured at the site over the years, one quantity at a time; a test entered by mistake can be withdrawn. */
export function WaterTests({ siteId, mayChange }: { siteId: string; mayChange: boolean }) {
  const { api, me } = useSession()
  const [words, points] = [useWords('site'), useWords('plot')]
  const [chosen, setChosen] = useState<Quantity | null>(null)
  const water = useQuery(api.water.site.queryOptions({ input: { siteId } }))
  const withdraw = useCommand(api.water.withdrawTest.mutationOptions())
  const failure = water.error ?? withdraw.error
  if (failure) return <Problem happened={readFailure(failure).message} onRetry={() => void water.refetch()} retrying={water.isFetching} />
  if (!water.data) return <Skeleton lines={6} label={words('loadingTests')} />
  const { tests } = water.data
  const display = me.company
  const measured = QUANTITIES.filter((one) => tests.some((test) => test[one.key] !== null))
  const quantity = measured.find((one) => one.value === chosen) ?? measured[0]
  if (!quantity) return <p className="text-soft">{words('noTests')}</p>
  const unit = quantity.value === 'hardness' && display.unitSystem === 'us' ? 'gpg' : 'mg/L'
  return (
    <>
      {measured.length > 1 ? (
        <ChoiceGroup
          label={words('whatToShow')}
          inline
          name="water-quantity"
          choices={measured.map(({ value }) => ({ value, label: words(`quantity/${value}`) }))}
          value={quantity.value}
          onChange={(value) => setChosen(value as Quantity)}
        />
      ) : null}
      <TestsOverTime
        title={words(`quantity/${quantity.value}`)}
        unit={unit}
        tests={pointsOf(tests, quantity, display)}
        limit={quantity.value === 'iron' ? { value: IRON_LIMIT_MG_L, label: words('ironLimit') } : undefined}
      />
      <details className="mt-3">
        <summary className="cursor-pointer">{words('allTests', { count: tests.length })}</summary>
        <DataTable
          caption={words('testsOfSite')}
          rows={tests}
          rowKey={(test) => test.id}
          columns={[
            { key: 'day', head: words('day'), phone: 'title', cell: (test) => formatDay(test.day, display) },
            { key: 'drawn', head: words('drawn'), cell: (test) => points(`point/${test.point}`) },
            { key: 'found', head: words('found'), cell: (test) => valueWords(test, display, words) },
            {
              key: 'withdraw',
              head: <span className="sr-only">{words('action')}</span>,
              align: 'right',
              cell: (test) =>
                mayChange ? (
                  <Button
                    kind="quiet"
                    busy={withdraw.isPending && withdraw.variables?.id === test.id}
                    onClick={() => withdraw.send({ id: test.id, version: test.version })}
                  >
                    {words('withdraw')}
                    <span className="sr-only"> {words('theTestOf', { day: formatDay(test.day, display) })}</span>
                  </Button>
                ) : null,
            },
          ]}
        />
      </details>
    </>
  )
}
