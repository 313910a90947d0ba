import type { BedDrawing } from '@almanac/softener/drawing/drawing-types'
import { G, Path, Text } from '@react-pdf/renderer'
import { printable } from '../print/printable-text.ts'
import { BOLD, FAMILY, INK, LINE, SOFT } from '../print/printed.tsx'

type Props = { drawing: BedDrawing; pointsPerIn: number; origin: { x: number; y: number } }

/** Letters of a detail that fit beside the figure on one line. */
const DETAIL_LETTERS = 36

/** Dimension lines, their texts and the cut mark of the tube, in points. */
export function FigureDimensions({ drawing, pointsPerIn, origin }: Props) {
  const x = (inches: number) => origin.x + inches * pointsPerIn
  const y = (inches: number) => origin.y - inches * pointsPerIn
  const lineX = x(drawing.bounds.maxX) + 14
  const textX = lineX + 8
  const left = drawing.dimensions.find((one) => one.side === 'left')
  const bottom = drawing.dimensions.find((one) => one.side === 'bottom')
  const right = drawing.dimensions.filter((one) => one.side === 'right')
  const cut = drawing.callouts[0]
  // The note on the cut stands above all others: it is the one figure that is sawn to.
  const highest = Math.min(...right.map((one) => y(one.labelAtIn)), y(drawing.bounds.maxY) + 40)
  const cutY = Math.min(cut ? y(cut.at.y) : 0, highest - 26)
  return (
    <G>
      {left ? (
        <>
          <Tick x={x(left.from.x) - 16} top={y(left.to.y)} bottom={y(left.from.y)} edge={x(left.from.x)} />
          <G transform={`rotate(-90, ${x(left.from.x) - 20}, ${y((left.from.y + left.to.y) / 2)})`}>
            <Words x={x(left.from.x) - 20} y={y((left.from.y + left.to.y) / 2)} anchor="middle" text={joined(left.label, left.detail)} />
          </G>
        </>
      ) : null}
      {bottom ? (
        <>
          <Path
            d={`M${x(bottom.from.x)} ${origin.y + 6} H${x(bottom.to.x)} M${x(bottom.from.x)} ${origin.y + 3} v6 M${x(bottom.to.x)} ${origin.y + 3} v6`}
            stroke={INK}
            strokeWidth={0.7}
            fill="none"
          />
          <Words x={x(0)} y={origin.y + 18} anchor="middle" text={bottom.label} />
        </>
      ) : null}
      {right.map((one) => (
        <G key={one.role}>
          <Tick x={lineX} top={y(one.to.y)} bottom={y(one.from.y)} edge={x(Math.max(one.from.x, one.to.x))} />
          {Math.abs(y(one.labelAtIn) - y((one.from.y + one.to.y) / 2)) > 3 ? (
            <Path
              d={`M${lineX} ${y((one.from.y + one.to.y) / 2)} L${textX - 2} ${y(one.labelAtIn)}`}
              stroke={LINE}
              strokeWidth={0.5}
              fill="none"
            />
          ) : null}
          <Label x={textX} y={y(one.labelAtIn)} label={one.label} detail={one.detail} />
        </G>
      ))}
      {cut ? (
        <>
          <Path
            d={`M${x(Math.abs(cut.at.x)) + 2} ${y(cut.at.y)} H${lineX - 4} L${textX - 2} ${cutY}`}
            stroke={INK}
            strokeWidth={0.8}
            fill="none"
          />
          <Label x={textX} y={cutY} label={cut.label} detail={cut.detail} />
        </>
      ) : null}
    </G>
  )
}

const joined = (label: string, detail: string | null) => (detail === null ? label : `${label}, ${detail}`)

function Tick({ x, top, bottom, edge }: { x: number; top: number; bottom: number; edge: number }) {
  const away = Math.sign(x - edge)
  return (
    <>
      <Path d={`M${edge + 3 * away} ${top} H${x} M${edge + 3 * away} ${bottom} H${x}`} stroke={LINE} strokeWidth={0.4} fill="none" />
      <Path d={`M${x} ${top} V${bottom} M${x - 3} ${top} h6 M${x - 3} ${bottom} h6`} stroke={INK} strokeWidth={0.7} fill="none" />
    </>
  )
}

function Words({ x, y, text, anchor = 'start' }: { x: number; y: number; text: string; anchor?: 'start' | 'middle' }) {
  return (
    <Text x={x} y={y} textAnchor={anchor} style={{ fontFamily: FAMILY, fontSize: 8.5 }} fill={INK}>
      {printable(text)}
    </Text>
  )
}

/** Main text in bold with its details under it, both around `y`. */
function Label({ x, y, label, detail }: { x: number; y: number; label: string; detail: string | null }) {
  const details = detail === null ? [] : broken(printable(detail))
  const top = y - (details.length * 9) / 2 + 3
  return (
    <>
      <Text x={x} y={top} style={{ fontFamily: BOLD, fontSize: 8.5 }} fill={INK}>
        {printable(label)}
      </Text>
      {details.map((line, i) => (
        <Text key={line} x={x} y={top + 9.5 * (i + 1)} style={{ fontFamily: FAMILY, fontSize: 7.5 }} fill={SOFT}>
          {line}
        </Text>
      ))}
    </>
  )
}

/** At most two lines, broken after a semicolon or comma where the text is long. */
function broken(text: string): string[] {
  if (text.length <= DETAIL_LETTERS) return [text]
  const at = Math.max(text.lastIndexOf('; ', DETAIL_LETTERS), text.lastIndexOf(', ', DETAIL_LETTERS))
  return at <= 0 ? [text] : [text.slice(0, at + 1), text.slice(at + 2)]
}
