import type { BedPage } from '@almanac/contract/beds'
import type { EndCause } from '@almanac/records/end-cause'
import { Section } from '@almanac/ui/section'
import { TextLink } from '@almanac/ui/text-link'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { useBedTexts } from '@/client/use-bed-texts'

/** The beds this tank held before and since. */
export function OtherBeds({ bed }: { bed: BedPage }) {
  const texts = useBedTexts()
  const [words, lines, causes] = [useWords('bed'), useWords('site'), useWords('endCause')]
  return (
    <Section title={words('otherBeds')}>
      <ul className="border-t border-line">
        {bed.otherBeds.map((one) => (
          <li key={one.id} className="flex flex-wrap gap-x-3 border-b border-line py-2">
            <TextLink href={`/beds/${one.id}`} link={Link}>
              {lines('fromTo', {
                from: texts.began(one) ?? lines('startUnknown'),
                to: (one.endedLatest ? texts.span(one.endedEarliest, one.endedLatest) : null) ?? words('now'),
              })}
            </TextLink>
            <span className="text-soft">
              {[texts.resin(one), one.endCause && causes(one.endCause as EndCause).toLowerCase()].filter(Boolean).join(', ')}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
