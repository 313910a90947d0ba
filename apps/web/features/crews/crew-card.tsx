'use client'
import { Button } from '@almanac/ui/button'
import type { ReactNode } from 'react'

type Props = { name: string; left: string | null; awayLabel: string; onEdit: () => void; onAway: () => void; children: ReactNode }

/** One person or vehicle: the name, what can be done, and the facts below. */
export function CrewCard({ name, left, awayLabel, onEdit, onAway, children }: Props) {
  return (
    <li data-crew-card className="pb-6">
      <div className="flex flex-wrap items-baseline justify-between gap-x-4 pb-1">
        <h3 tabIndex={-1} className="text-lead font-semibold">
          {name}
          {left ? <span className="font-normal text-soft"> · {left}</span> : null}
        </h3>
        <span className="flex gap-4">
          {left ? null : (
            <Button kind="quiet" onClick={onAway} aria-label={`${awayLabel}: ${name}`}>
              {awayLabel}
            </Button>
          )}
          <Button kind="quiet" onClick={onEdit} aria-label={`Edit ${name}`}>
            Edit
          </Button>
        </span>
      </div>
      {children}
    </li>
  )
}
