import { View } from '@react-pdf/renderer'
import { BOLD, INK, Printed, SOFT } from './printed.tsx'

export type TitleCell = { name: string; value: string; grow: number }

/** The ruled strip at the foot of a drawing sheet: what it is, of what, in which scale, when, which sheet. */
export function TitleBlock({ cells }: { cells: readonly TitleCell[] }) {
  return (
    <View style={{ flexDirection: 'row', borderWidth: 1.2, borderColor: INK, marginTop: 'auto' }}>
      {cells.map((cell, i) => (
        <View
          key={cell.name}
          style={{
            flexGrow: cell.grow,
            flexBasis: 0,
            paddingVertical: 3,
            paddingHorizontal: 5,
            borderLeftWidth: i === 0 ? 0 : 0.7,
            borderColor: INK,
          }}
        >
          <Printed style={{ fontSize: 6.8, color: SOFT }}>{cell.name}</Printed>
          <Printed style={{ fontSize: 9, fontFamily: BOLD }} lines={1}>
            {cell.value}
          </Printed>
        </View>
      ))}
    </View>
  )
}
