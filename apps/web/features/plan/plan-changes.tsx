'use client'
import type { PlanDifference, PlanPage } from '@almanac/contract/plans'
import { Button } from '@almanac/ui/button'
import { Checkbox } from '@almanac/ui/checkbox'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Section } from '@almanac/ui/section'
import { formatNearDay } from '@almanac/units/format-day'
import { type FormEvent, useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

const CREW_WORDS: Partial<Record<PlanPage['asked']['kind'], string>> = {
  'fewer-people': 'The missing people come off the sheet. The visits that stay go to those who are left.',
  'other-vehicle': 'The other vehicle goes on the sheet with the visits that stay.',
}

/** What the plan changes, by day and crew, each crew's day with one tick for all of it; all of it is ticked at first. */
export function PlanChanges({ page }: { page: PlanPage }) {
  const display = useDisplay()
  const { api } = useSession()
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set())
  const accept = useCommand(api.plans.accept.mutationOptions())
  const taken = page.differences.filter((one) => !left.has(one.id))
  const days = Map.groupBy(page.differences, (one) => one.day)
  const crewOnly = page.differences.length === 0
  const crewWords = CREW_WORDS[page.asked.kind]
  if (crewOnly && !crewWords) return <p className="mt-6">No changes needed.</p>
  const tick = (ids: readonly string[], on: boolean) => {
    const next = new Set(left)
    for (const id of ids) {
      if (on) next.delete(id)
      else next.add(id)
    }
    setLeft(next)
  }
  const submit = (event: FormEvent) => {
    event.preventDefault()
    accept.send({ planId: page.id, version: page.version, differenceIds: taken.map((one) => one.id) })
  }
  return (
    <form onSubmit={submit}>
      {crewWords ? <p className="mt-6">{crewWords}</p> : null}
      <Section
        title={crewOnly ? 'No visit has to move' : page.differences.length === 1 ? 'One change' : `${page.differences.length} changes`}
      >
        {[...days].map(([day, changes]) => (
          <fieldset key={day} className="mb-4">
            <legend className="font-medium">{formatNearDay(day, display)}</legend>
            {[...Map.groupBy(changes, (one) => one.crewDayId)].map(([crewDayId, own]) => (
              <CrewDayChanges key={crewDayId} changes={own} left={left} onTick={tick} />
            ))}
          </fieldset>
        ))}
      </Section>
      {accept.error ? <Problem happened={readFailure(accept.error).message} /> : null}
      <div className="flex flex-wrap gap-3">
        <Button kind="ink" type="submit" busy={accept.isPending} disabled={taken.length === 0 && !crewWords}>
          {crewOnly
            ? 'Accept'
            : taken.length === page.differences.length
              ? 'Accept all'
              : `Accept ${taken.length} of ${page.differences.length}`}
        </Button>
        {left.size === 0 ? null : (
          <Button kind="quiet" onClick={() => setLeft(new Set())}>
            Check all again
          </Button>
        )}
      </div>
    </form>
  )
}

type CrewDayProps = { changes: readonly PlanDifference[]; left: ReadonlySet<string>; onTick: (ids: readonly string[], on: boolean) => void }

/** Customers who already have a time come first: somebody may have told it to them. */
const isKnown = ({ kind }: PlanDifference) => (kind === 'place' ? 1 : 0)

/** One crew's day: a tick for all of it, then its changes. */
function CrewDayChanges({ changes, left, onTick }: CrewDayProps) {
  const ids = changes.map((one) => one.id)
  const on = ids.filter((id) => !left.has(id)).length
  const crew = changes[0]?.crew ?? ''
  return (
    <div className="mb-2">
      <Checkbox
        label={`${crew}: ${changes.length === 1 ? 'one change' : `all ${changes.length} changes`}`}
        checked={on === ids.length}
        partly={on > 0 && on < ids.length}
        onChange={(event) => onTick(ids, event.target.checked)}
      />
      <div className="pl-7">
        {[...changes]
          .sort((a, b) => isKnown(a) - isKnown(b))
          .map((one) => (
            <Checkbox
              key={one.id}
              label={one.sentence}
              checked={!left.has(one.id)}
              onChange={(event) => onTick([one.id], event.target.checked)}
            />
          ))}
      </div>
    </div>
  )
}
