import type { BedPage } from '@almanac/contract/beds'
import { type EndCause, endCauseWords } from '@almanac/records/end-cause'
import { Section } from '@almanac/ui/section'
import { TextLink } from '@almanac/ui/text-link'
import Link from 'next/link'
import { useBedTexts } from '@/client/use-bed-texts'

/** The beds this tank held before and since. */
export function OtherBeds({ bed }: { bed: BedPage }) {
  const texts = useBedTexts()
  return (
    <Section title="Other beds of this tank">
      <ul className="border-t border-line">
        {bed.otherBeds.map((one) => (
          <li key={one.id} className="flex flex-wrap gap-x-3 border-b border-line py-2">
            <TextLink href={`/beds/${one.id}`} link={Link}>
              {texts.began(one) ?? 'start not known'} to {one.endedLatest ? texts.span(one.endedEarliest, one.endedLatest) : 'now'}
            </TextLink>
            <span className="text-soft">{[texts.resin(one), one.endCause && causeWords(one.endCause)].filter(Boolean).join(', ')}</span>
          </li>
        ))}
      </ul>
    </Section>
  )
}

const causeWords = (cause: string) => endCauseWords[cause as EndCause]?.toLowerCase() ?? cause
