import type { KitAlternative } from '@almanac/softener/kit/compare-kits'
import { RESIN_KINDS } from '@almanac/softener/resin/resin-kinds'
import { DataTable } from '@almanac/ui/data-table'
import { formatWeightLb } from '@almanac/units/format'
import { formatWholeMoney } from '@almanac/units/money'
import type { UnitSystem } from '@almanac/units/unit-system'

type Props = { kits: readonly KitAlternative[]; currency: string; units: UnitSystem }

const signed = (value: number, words: string) => (Math.abs(value) < 0.05 ? 'the same' : `${value > 0 ? '+' : '−'} ${words}`)

/** The kit with each resin, side by side: bags, what is on the shelf, weight and price against 8 %. */
export function KitsTable({ kits, currency, units }: Props) {
  return (
    <DataTable
      caption="The kit with each resin"
      rows={kits}
      rowKey={(row) => row.kind}
      columns={[
        { key: 'resin', head: 'Resin', cell: (row) => RESIN_KINDS[row.kind].shortLabel, phone: 'title' },
        { key: 'bags', head: 'Bags', cell: (row) => row.kit.bagPlan.bags.map((bag) => `${bag.count} × ${bag.label}`).join(', ') },
        { key: 'shelf', head: 'On the shelf', cell: (row) => `${row.bagsFromShelf} of ${row.kit.bagPlan.bagCount}` },
        {
          key: 'weight',
          head: 'To carry in',
          align: 'right',
          cell: (row) =>
            `${formatWeightLb(row.kit.loadWeightLb, units)}${row.kind === 'gel-8' ? '' : ` (${signed(row.moreWeightLb, formatWeightLb(Math.abs(row.moreWeightLb), units))})`}`,
        },
        { key: 'price', head: 'Materials', align: 'right', cell: (row) => priceWords(row, currency) },
      ]}
    />
  )
}

function priceWords({ kind, priced, moreMinor }: KitAlternative, currency: string): string {
  const whole =
    priced.totalMinor === null
      ? priced.knownMinor > 0
        ? `at least ${formatWholeMoney(priced.knownMinor, currency)}`
        : 'price unknown'
      : formatWholeMoney(priced.totalMinor, currency)
  if (kind === 'gel-8') return whole
  return `${whole} (${moreMinor === null ? 'difference unknown' : signed(moreMinor, formatWholeMoney(Math.abs(moreMinor), currency))})`
}
