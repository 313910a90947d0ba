import { bagsFromShelf } from '@almanac/softener/kit/bags-on-shelf'
import { BESIDES } from '@almanac/softener/kit/kit-supply-lines'
import type { KitLine } from '@almanac/softener/kit/kit-types'
import { formatWeightLb } from '@almanac/units/format'
import { showWhole } from '@almanac/units/format-number'
import { View } from '@react-pdf/renderer'
import { BOLD, INK, LINE, Printed, sheet } from '../print/printed.tsx'
import { TickBox } from '../print/tick-box.tsx'
import type { MadePlan } from './make-plan.ts'

const WIDTH = { weight: 58, back: 66 } as const

/** What to carry in, each line with a box to tick and its weight, and what comes back with the crew. */
export function KitTable({ plan }: { plan: MadePlan }) {
  const { kit, facts, words } = plan
  if (!kit.ok)
    return (
      <View style={{ marginTop: 6 }}>
        <Printed style={sheet.heading}>{words('kit')}</Printed>
        <Printed>{kit.reason}</Printed>
      </View>
    )
  const { value } = kit
  return (
    <View style={{ marginTop: 4 }}>
      <View style={{ flexDirection: 'row', alignItems: 'flex-end', borderBottomWidth: 1, borderColor: INK, marginBottom: 1 }}>
        <Printed style={{ fontFamily: BOLD, fontSize: 10.5, flexGrow: 1 }}>{words('kit')}</Printed>
        <Cell width={WIDTH.weight}>{formatWeightLb(value.loadWeightLb, facts.display)}</Cell>
        <Cell width={WIDTH.back}> </Cell>
      </View>
      {value.lines
        .filter((line) => !BESIDES.some((item) => item === line.item))
        .map((line) => (
          <View
            key={`${line.item}-${line.text}`}
            style={{ flexDirection: 'row', borderBottomWidth: 0.4, borderColor: LINE, paddingVertical: 1.4 }}
          >
            <TickBox size={8} />
            <View style={{ flexGrow: 1, flexBasis: 0 }}>
              <Printed lines={2}>{onShelf(plan, line)}</Printed>
            </View>
            <Cell width={WIDTH.weight}>{line.weightLb === null ? '' : formatWeightLb(line.weightLb, facts.display)}</Cell>
            <Cell width={WIDTH.back}>{line.toReturn ? words('comesBack') : ''}</Cell>
          </View>
        ))}
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

function Cell({ width, children }: { width: number; children: string }) {
  return <Printed style={{ width, textAlign: 'right', flexShrink: 0 }}>{children}</Printed>
}
