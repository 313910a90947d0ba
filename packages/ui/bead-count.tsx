import { showWhole } from '@almanac/units/format-number'
import { useDisplay } from './display.tsx'

/** Beads at the most: beyond it one stands for several. */
const MOST = 120
const PER_ROW = 12
const STEP = 13

/** A count as beads in rows, the first of them full, the others hollow: how many of all want something now. */
export function BeadCount({ all, full, words }: { all: number; full: number; words: string }) {
  const display = useDisplay()
  const each = Math.max(1, Math.ceil(all / MOST))
  const beads = Math.round(all / each)
  const rows = Math.max(1, Math.ceil(beads / PER_ROW))
  return (
    <figure>
      <svg role="img" aria-label={words} width={PER_ROW * STEP} height={rows * STEP} className="block max-w-full">
        {Array.from({ length: beads }, (_, i) => (
          <circle
            key={i}
            cx={(i % PER_ROW) * STEP + 6}
            cy={Math.floor(i / PER_ROW) * STEP + 6}
            r="4.5"
            className={i < Math.round(full / each) ? 'fill-bead stroke-bead' : 'fill-none stroke-bead'}
            strokeWidth="1.5"
          />
        ))}
      </svg>
      <figcaption className="mt-2 text-small">
        {words}
        {each > 1 ? <span className="text-soft">; a bead is {showWhole(each, display)} beds</span> : null}
      </figcaption>
    </figure>
  )
}
