'use client'
import type { CallRow } from '@almanac/contract/calls'
import { useDisplay } from '@almanac/ui/display'
import { TextLink } from '@almanac/ui/text-link'
import { formatInstant } from '@almanac/units/format-clock'
import Link from 'next/link'
import { PhoneLink } from '../phone-link.tsx'
import { followedWords, saidWords } from './call-words.ts'

/** Calls, the last first. `ofSite`: the page already says where. */
export function CallList({ calls, ofSite = false }: { calls: readonly CallRow[]; ofSite?: boolean }) {
  const display = useDisplay()
  return (
    <ul className="border-t border-line">
      {calls.map((call) => (
        <li key={call.id} className="border-b border-line py-2.5">
          <span className="text-small text-soft">
            {formatInstant(call.at, display)}, {call.takenBy}
          </span>
          {ofSite ? null : (
            <span className="block font-semibold">
              {call.siteId ? (
                <TextLink href={`/sites/${call.siteId}`} link={Link}>
                  {[call.customerName, call.siteLabel].filter(Boolean).join(', ')}
                </TextLink>
              ) : (
                call.callerName
              )}
            </span>
          )}
          {call.callerPhone ? (
            <span className="block">
              {ofSite && call.callerName ? `${call.callerName} ` : ''}
              <PhoneLink phone={call.callerPhone} />
            </span>
          ) : null}
          <span className="block">{saidWords(call, display) || 'Nothing noted'}</span>
          <span className="block text-small text-soft">
            {call.job ? (
              <TextLink href={`/jobs/${call.job.id}`} link={Link}>
                {followedWords(call)}
              </TextLink>
            ) : (
              followedWords(call)
            )}
          </span>
        </li>
      ))}
    </ul>
  )
}
