import { Font, StyleSheet, Text } from '@react-pdf/renderer'
import type { ComponentProps } from 'react'
import { printable } from './printable-text.ts'

// Words are never broken: a broken unit or name is misread in a cellar.
Font.registerHyphenationCallback((word) => [word])

/** Near black for everything that must survive a copier, grey only for hairlines and second lines. */
export const INK = '#111111'
export const SOFT = '#444444'
export const LINE = '#9a9a9a'
export const FAMILY = 'Helvetica'
export const BOLD = 'Helvetica-Bold'

export const sheet = StyleSheet.create({
  page: { fontFamily: FAMILY, fontSize: 9, color: INK, paddingTop: 22, paddingHorizontal: 30, paddingBottom: 22 },
  heading: { fontFamily: BOLD, fontSize: 10.5, borderBottomWidth: 1, borderColor: INK, paddingBottom: 2, marginBottom: 3 },
  soft: { color: SOFT },
  bold: { fontFamily: BOLD },
})

type Style = NonNullable<Extract<ComponentProps<typeof Text>['style'], { fontSize?: unknown }>>

/** Line to line, as a share of the size. The library works it out from the text's own size, so each text states both. */
export const LEADING = 1.18

/** A text of the sheet, in letters that its typeface has. `lines` cuts what is longer, with an ellipsis. */
export function Printed({ children, style, lines }: { children: string; style?: Style; lines?: number }) {
  const cut: Style = lines === undefined ? {} : { maxLines: lines, textOverflow: 'ellipsis' }
  return <Text style={{ fontSize: 9, lineHeight: LEADING, ...style, ...cut }}>{printable(children)}</Text>
}
