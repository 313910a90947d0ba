'use client'
import type { BedPage } from '@almanac/contract/beds'
import { kitOf } from '@almanac/softener/rebed/rebed-of-record'
import { Section } from '@almanac/ui/section'
import { Why } from '@almanac/ui/why'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** What a rebed of this tank would need, in short; each line can be asked why. */
export function BedKit({ bed }: { bed: BedPage }) {
  const firm = useRebedFirm()
  const { display } = firm
  const kit = kitOf(bed.facts, firm)
  if (!kit.ok)
    return (
      <Section title="Kit for a rebed">
        <p className="text-soft">{kit.reason}</p>
      </Section>
    )
  const { value } = kit
  return (
    <Section title="Kit for a rebed">
      <p className="mb-3 max-w-[75ch]">
        {formatWeightLb(value.loadWeightLb, display)} to carry in, tube cut to {formatCutLengthIn(value.tubeLengthIn, display)}, the full
        tank weighs {formatWeightLb(value.fullTankLb, display)}.{' '}
        <Why
          explanation={{
            title: 'How we chose the kit',
            summary: `${value.crewWhy} The heaviest lift is ${value.heaviestLift}, ${formatWeightLb(value.heaviestLiftLb, display)}.`,
            assumptions: kit.assumptions,
            missing: kit.missing,
            source: [...new Set(kit.sources)].join('; '),
          }}
        >
          {value.crewSize === 2 ? 'Two people' : `${value.crewSize} people`}
        </Why>
        .
      </p>
      <ul className="grid gap-x-12 border-t border-line sm:grid-cols-2">
        {value.lines.map((line) => (
          <li key={`${line.item}-${line.label}`} className="flex justify-between gap-4 border-b border-line py-2">
            <Why explanation={{ title: line.label, summary: line.why, source: line.source }}>
              <span className="block text-left">{line.text}</span>
            </Why>
            <span className="shrink-0 text-soft">{line.weightLb === null ? '' : formatWeightLb(line.weightLb, display)}</span>
          </li>
        ))}
      </ul>
      {value.warnings.map((warning) => (
        <p key={warning} className="mt-2 text-bead-ink">
          Note: {warning}
        </p>
      ))}
    </Section>
  )
}
