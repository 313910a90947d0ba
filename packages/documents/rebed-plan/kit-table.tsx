import { bagsFromShelf } from '@almanac/softener/kit/bags-on-shelf'
import { BESIDES } from '@almanac/softener/kit/kit-supply-lines'
import type { KitLine } from '@almanac/softener/kit/kit-types'
import { formatWeightLb } from '@almanac/units/format'
import { showWhole } from '@almanac/units/format-number'
import { formatMoney } from '@almanac/units/money'
import { View } from '@react-pdf/renderer'
import { BOLD, INK, LINE, Printed, SOFT, sheet } from '../print/printed.tsx'
import { TickBox } from '../print/tick-box.tsx'
import type { MadePlan } from './make-plan.ts'

const WIDTH = { weight: 58, price: 84 } as const

/** What to carry in, each line with a box to tick, its weight and its price; a missing price says so. */
export function KitTable({ plan }: { plan: MadePlan }) {
  const { kit, facts, words } = plan
  if (!kit.ok)
    return (
      <View style={{ marginTop: 6 }}>
        <Printed style={sheet.heading}>{words('kit')}</Printed>
        <Printed>{kit.reason}</Printed>
      </View>
    )
  const { priced, value } = kit
  // The stores keep prices in the list's own currency, whatever the company's is by now.
  const money = { locale: facts.display.locale, currency: priced.currency }
  const open = priced.unknown.length
  const total =
    priced.totalMinor !== null ? formatMoney(priced.totalMinor, money) : words('atLeast', { price: formatMoney(priced.knownMinor, money) })
  return (
    <View style={{ marginTop: 4 }}>
      <View style={{ flexDirection: 'row', alignItems: 'flex-end', borderBottomWidth: 1, borderColor: INK, marginBottom: 1 }}>
        <Printed style={{ fontFamily: BOLD, fontSize: 10.5, flexGrow: 1 }}>{words('kit')}</Printed>
        <Cell width={WIDTH.weight}>{formatWeightLb(value.loadWeightLb, facts.display)}</Cell>
        <Cell width={WIDTH.price}>{priced.knownMinor > 0 ? total : words('price')}</Cell>
      </View>
      {priced.lines
        .filter(({ line }) => !BESIDES.some((item) => item === line.item))
        .map(({ line, priceMinor, charged }) => (
          <View
            key={`${line.item}-${line.text}`}
            style={{ flexDirection: 'row', borderBottomWidth: 0.4, borderColor: LINE, paddingVertical: 1.4 }}
          >
            <TickBox size={8} />
            <View style={{ flexGrow: 1, flexBasis: 0 }}>
              <Printed lines={2}>{onShelf(plan, line)}</Printed>
            </View>
            <Cell width={WIDTH.weight}>{line.weightLb === null ? '' : formatWeightLb(line.weightLb, facts.display)}</Cell>
            <Cell width={WIDTH.price} soft={priceMinor === null}>
              {!charged ? words('comesBack') : priceMinor === null ? words('noPrice') : formatMoney(priceMinor, money)}
            </Cell>
          </View>
        ))}
      {open > 0 ? (
        <Printed style={{ fontSize: 7.5, color: SOFT, marginTop: 2 }} lines={1}>
          {words('unpriced', { count: open })}
        </Printed>
      ) : null}
    </View>
  )
}

/** The line with how many of its bags stand on the shelf. */
function onShelf({ kit, facts, words }: MadePlan, { item, text, quantity, volumeFt3 }: KitLine): string {
  if (!kit.ok || item !== 'resin' || volumeFt3 === null) return text
  const there = bagsFromShelf({ count: quantity, volumeFt3: volumeFt3 / quantity }, facts.shelf, kit.value.resinKind)
  if (there === 0) return text
  return there === quantity
    ? words('onShelf', { line: text })
    : words('someOnShelf', { line: text, count: showWhole(there, facts.display) })
}

function Cell({ width, soft, children }: { width: number; soft?: boolean; children: string }) {
  return <Printed style={{ width, textAlign: 'right', flexShrink: 0, ...(soft ? { color: SOFT } : {}) }}>{children}</Printed>
}
