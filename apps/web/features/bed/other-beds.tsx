import type { BedPage } from '@almanac/contract/beds'
import { type EndCause, endCauseWords } from '@almanac/records/end-cause'
import { useDisplay } from '@almanac/ui/display'
import { Section } from '@almanac/ui/section'
import { TextLink } from '@almanac/ui/text-link'
import Link from 'next/link'
import { beganWords, resinWords, spanWords } from '@/client/bed-facts-words'
import { useSession } from '@/client/providers'

/** The beds this tank held before and since. */
export function OtherBeds({ bed }: { bed: BedPage }) {
  const display = useDisplay()
  const { me } = useSession()
  return (
    <Section title="Other beds of this tank">
      <ul className="border-t border-line">
        {bed.otherBeds.map((one) => (
          <li key={one.id} className="flex flex-wrap gap-x-3 border-b border-line py-2">
            <TextLink href={`/beds/${one.id}`} link={Link}>
              {beganWords(one, display) ?? 'beginning not known'} to{' '}
              {one.endedLatest ? spanWords(one.endedEarliest, one.endedLatest, display) : 'now'}
            </TextLink>
            <span className="text-soft">
              {[resinWords(one, me.company), one.endCause && causeWords(one.endCause)].filter(Boolean).join(', ')}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  )
}

const causeWords = (cause: string) => endCauseWords[cause as EndCause]?.toLowerCase() ?? cause
