'use client'
import type { BedDrawing as Drawing } from '@almanac/softener/drawing/drawing-types'
import { useId } from 'react'
import { BedLabel, DimensionLine } from './bed-dimensions.tsx'
import { layoutBed } from './bed-layout.ts'
import { BedPatterns, BedShape } from './bed-shape.tsx'
import { Notice } from './notice.tsx'
import { useWidth } from './use-width.ts'

export type BedDrawingProps = {
  /** What `drawBed` made. */
  drawing: Drawing
  /** Names the drawing: "Bed at Orchard Lane 14". */
  title: string
  /** About how high it may be, in pixels; it grows when its texts need more. */
  height?: number
}

/**
 * The signature picture: tank and bed to scale, dimensioned as on a drawing. Described in words for people who don't see it; warnings
 * stand under it in full.
 */
export function BedDrawing({ drawing, title, height = 640 }: BedDrawingProps) {
  const [ref, width, fontSize] = useWidth<HTMLElement>(620)
  const id = useId()
  const layout = layoutBed(drawing, width, height, fontSize)
  const { scale, origin, dimensionX } = layout
  const tank = drawing.dimensions.find((d) => d.side === 'left')
  const across = drawing.dimensions.find((d) => d.side === 'bottom')
  const y = (inches: number) => origin.y - inches * scale
  const x = (inches: number) => origin.x + inches * scale
  return (
    <figure ref={ref} className="my-4 min-w-0 text-base">
      <svg
        role="img"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-description`}
        width={width}
        height={layout.height}
        className="block max-w-full"
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-description`}>{drawing.description}</desc>
        <BedPatterns id={id} />
        <g transform={`translate(${origin.x} ${origin.y}) scale(${scale})`}>
          {drawing.shapes.map((shape, i) => (
            <BedShape key={`${shape.role}-${i}`} shape={shape} patternId={id} />
          ))}
        </g>
        {tank ? (
          <>
            <DimensionLine x={dimensionX.left} top={y(tank.to.y)} bottom={y(tank.from.y)} edge={x(tank.from.x)} />
            <text
              textAnchor="middle"
              transform={`translate(${dimensionX.left - 8} ${y((tank.from.y + tank.to.y) / 2)}) rotate(-90)`}
              className="fill-ink"
            >
              {tank.label}
              {tank.detail ? <tspan className="fill-soft text-small">, {tank.detail}</tspan> : null}
            </text>
          </>
        ) : null}
        {across ? (
          <>
            <path
              d={`M${x(across.from.x)} ${origin.y + 14} H${x(across.to.x)} M${x(across.from.x)} ${origin.y + 9} v10 M${x(across.to.x)} ${origin.y + 9} v10`}
              className="fill-none stroke-ink"
            />
            <text x={x(0)} y={origin.y + 20 + fontSize} textAnchor="middle" className="fill-ink">
              {across.label}
            </text>
          </>
        ) : null}
        {layout.rightLines.map((line) => (
          <DimensionLine key={line.role} x={dimensionX.right} {...line} />
        ))}
        {layout.labels.map((label) => (
          <BedLabel key={label.role} label={label} textX={layout.textX} lineX={dimensionX.right} fontSize={fontSize} />
        ))}
      </svg>
      {drawing.warnings.map((warning) => (
        <Notice key={warning} kind="mind">
          {warning}
        </Notice>
      ))}
    </figure>
  )
}
