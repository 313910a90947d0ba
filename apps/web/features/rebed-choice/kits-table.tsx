import { bagName } from '@almanac/softener/kit/bag-plan'
import type { KitAlternative } from '@almanac/softener/kit/compare-kits'
import { DataTable } from '@almanac/ui/data-table'
import type { Display } from '@almanac/units/display'
import { formatWeightLb } from '@almanac/units/format'
import { formatWholeMoney, type MoneyDisplay } from '@almanac/units/money'
import { useWords } from '@almanac/words/use-words'

type Props = { kits: readonly KitAlternative[]; display: Omit<Display, 'timeZone'> }

const signed = (value: number, words: string) => (Math.abs(value) < 0.05 ? 'the same' : `${value > 0 ? '+' : '−'} ${words}`)

/** The kit with each resin, side by side: bags, what is on the shelf, weight and price against 8%. */
export function KitsTable({ kits, display }: Props) {
  const words = useWords('kit')
  return (
    <DataTable
      caption="The kit with each resin"
      rows={kits}
      rowKey={(row) => row.kind}
      columns={[
        { key: 'resin', head: 'Resin', cell: (row) => words(`${row.kind}/short`), phone: 'title' },
        {
          key: 'bags',
          head: 'Bags',
          cell: (row) => row.kit.bagPlan.bags.map((bag) => `${bag.count} × ${bagName(bag.volumeFt3, words)}`).join(', '),
        },
        { key: 'shelf', head: 'On the shelf', cell: (row) => `${row.bagsFromShelf} of ${row.kit.bagPlan.bagCount}` },
        {
          key: 'weight',
          head: 'To carry in',
          align: 'right',
          cell: (row) =>
            `${formatWeightLb(row.kit.loadWeightLb, display)}${row.kind === 'gel-8' ? '' : ` (${signed(row.moreWeightLb, formatWeightLb(Math.abs(row.moreWeightLb), display))})`}`,
        },
        { key: 'price', head: 'Materials', align: 'right', cell: (row) => priceWords(row, display) },
      ]}
    />
  )
}

function priceWords({ kind, priced, moreMinor }: KitAlternative, display: MoneyDisplay): string {
  const whole =
    priced.totalMinor === null
      ? priced.knownMinor > 0
        ? `at least ${formatWholeMoney(priced.knownMinor, display)}`
        : 'price unknown'
      : formatWholeMoney(priced.totalMinor, display)
  if (kind === 'gel-8') return whole
  return `${whole} (${moreMinor === null ? 'difference unknown' : signed(moreMinor, formatWholeMoney(Math.abs(moreMinor), display))})`
}
