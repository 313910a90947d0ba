import type { CardLine } from '@almanac/softener/setting/card-types'
import { Why } from '@almanac/ui/why'

/** Lines of the card: what it is called, the value one may ask about, and a word to it. */
export function CardLines({ lines, strong }: { lines: readonly CardLine[]; strong?: boolean }) {
  return (
    <dl className="border-t border-line">
      {lines.map((line) => (
        <div
          key={line.id}
          className="grid grid-cols-[minmax(7.5rem,2fr)_3fr] items-baseline gap-x-4 border-b border-line py-2 break-inside-avoid"
        >
          <dt className="text-soft">{line.label}</dt>
          <dd>
            <Why explanation={line.why}>
              <span className={`block text-left ${strong ? 'text-lead font-semibold' : ''}`}>{line.value}</span>
            </Why>
            {line.hint ? <span className="block text-small text-soft">{line.hint}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  )
}
