'use client'
import type { BedPage } from '@almanac/contract/beds'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { Section } from '@almanac/ui/section'
import { Why } from '@almanac/ui/why'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import { useWords } from '@almanac/words/use-words'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** What a rebed of this tank would need, in short; each line can be asked why. */
export function BedKit({ bed }: { bed: BedPage }) {
  const firm = useRebedFirm()
  const words = useWords('bed')
  const { display } = firm
  const kit = kitOf(bed.facts, firm)
  if (!kit.ok)
    return (
      <Section title={words('kit')}>
        <p className="text-soft">{kit.reason}</p>
      </Section>
    )
  const { value } = kit
  return (
    <Section title={words('kit')}>
      <p className="mb-3 max-w-[75ch]">
        {words.rich('kitLead', {
          ...{ weight: formatWeightLb(value.loadWeightLb, display), tube: formatCutLengthIn(value.tubeLengthIn, display) },
          ...{ full: formatWeightLb(value.fullTankLb, display), people: value.crewSize },
          why: (people) => (
            <Why
              explanation={{
                title: words('kitWhy'),
                summary: words('kitSummary', {
                  ...{ crew: value.crewWhy, lift: value.heaviestLift, weight: formatWeightLb(value.heaviestLiftLb, display) },
                }),
                assumptions: kit.assumptions,
                missing: kit.missing,
                source: [...new Set(kit.sources)].join('; '),
              }}
            >
              {people}
            </Why>
          ),
        })}
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
          {words('warning', { warning })}
        </p>
      ))}
    </Section>
  )
}
