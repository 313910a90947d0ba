import { View } from '@react-pdf/renderer'
import { INK } from './printed.tsx'

/** An empty box to tick with a pencil. */
export function TickBox({ size = 9 }: { size?: number }) {
  return <View style={{ width: size, height: size, borderWidth: 0.9, borderColor: INK, marginRight: 5, marginTop: 1, flexShrink: 0 }} />
}
