'use client'
import type { GuideLine } from '@almanac/contract/guides'
import type { SiteSoftener } from '@almanac/contract/sites'
import { guideMeasureWords } from '@almanac/records/guide-measure'
import { acrossIn } from '@almanac/softener/identify/owner-measures'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextInput } from '@almanac/ui/text-input'
import { formatLengthIn } from '@almanac/units/format'
import { formatInstant } from '@almanac/units/format-clock'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** One link: where it leads while it works, and what the owner measured, as it comes in. */
function Guide({ guide }: { guide: GuideLine }) {
  const display = useDisplay()
  const { api, me } = useSession()
  const withdraw = useCommand(api.guides.withdraw.mutationOptions())
  const { id, version, path, entries, softenerLabel, createdAt, linkUntil } = guide
  return (
    <li className="border-b border-line py-3">
      <p className="text-small text-soft">
        {softenerLabel}, link made {formatInstant(createdAt, display)};{' '}
        {path ? `works until ${formatInstant(linkUntil, display)}` : 'ended'}
      </p>
      {entries.length === 0 ? <p className="text-soft">Nothing measured yet. Entries appear here as they come in.</p> : null}
      <ul aria-label={`Measured by the owner: ${softenerLabel}`}>
        {entries.map(({ measure, valueIn, at }) => (
          <li key={measure}>
            {guideMeasureWords[measure]}: <span className="font-semibold">{formatLengthIn(valueIn, me.company)}</span>
            {measure === 'around' ? `, about ${formatLengthIn(Math.round(acrossIn(valueIn)), me.company)} across` : ''}
            <span className="text-small text-soft"> {formatInstant(at, display)}</span>
          </li>
        ))}
      </ul>
      {withdraw.error ? <Problem happened={readFailure(withdraw.error).message} /> : null}
      {path ? (
        <div className="mt-2 flex flex-wrap items-end gap-3">
          <div className="min-w-0 grow basis-60">
            <TextInput
              label="The owner’s link"
              hint="Whoever has it can measure this tank, nothing else."
              readOnly
              value={`${location.origin}${path}`}
              onFocus={(event) => event.target.select()}
            />
          </div>
          <Button kind="quiet" busy={withdraw.isPending} onClick={() => withdraw.send({ guideId: id, version })}>
            End the link
          </Button>
        </div>
      ) : null}
    </li>
  )
}

/** An owner measures their tank by a link on their phone, while the office watches what comes in. */
export function SiteGuides({ siteId, softeners }: { siteId: string; softeners: readonly SiteSoftener[] }) {
  const { api } = useSession()
  const query = useQuery(api.guides.ofSite.queryOptions({ input: { siteId } }))
  const begin = useCommand(api.guides.begin.mutationOptions())
  if (softeners.length === 0) return null
  return (
    <Section title="Owner measures">
      {query.error ? <Problem happened={readFailure(query.error).message} onRetry={() => void query.refetch()} /> : null}
      {begin.error ? <Problem happened={readFailure(begin.error).message} /> : null}
      {query.isPending ? <Skeleton lines={2} label="Loading what was measured" /> : null}
      {query.data?.length === 0 ? <p className="text-soft">Make a link, and the owner measures the tank on their phone.</p> : null}
      {query.data && query.data.length > 0 ? (
        <ul className="border-t border-line">
          {query.data.map((one) => (
            <Guide key={one.id} guide={one} />
          ))}
        </ul>
      ) : null}
      <div className="mt-3 flex flex-wrap gap-3">
        {softeners.map((one) => (
          <Button key={one.id} busy={begin.isPending} onClick={() => begin.send({ softenerId: one.id })}>
            {softeners.length === 1 ? 'Make a measuring link' : `Make a link: ${one.label}`}
          </Button>
        ))}
      </div>
    </Section>
  )
}
