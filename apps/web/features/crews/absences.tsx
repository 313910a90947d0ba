'use client'
import type { Absence } from '@almanac/contract/crews'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useRef } from 'react'
import { absenceWords } from '@/client/crew-words'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'
import { useCrewSpeaking } from '@/client/use-crew-speaking'

/** Days away that are not over, each to be taken back. */
export function Absences({ name, absences }: { name: string; absences: readonly Absence[] }) {
  const speaking = useCrewSpeaking()
  const { api } = useSession()
  // The button goes with its line: whoever works by keyboard is put on the name, not at the top of the page.
  const named = useRef<HTMLElement>(null)
  const takeBack = useCommand(api.crews.takeBackAbsence.mutationOptions(), { onDone: () => named.current?.focus() })
  if (absences.length === 0) return null
  return (
    <>
      <ul>
        {absences.map((one) => (
          <li key={one.id} className="flex flex-wrap items-baseline justify-between gap-x-3">
            <span>{absenceWords(one, speaking)}</span>
            <Button
              kind="quiet"
              busy={takeBack.isPending}
              aria-label={`Remove: ${name}, ${absenceWords(one, speaking)}`}
              onClick={(event) => {
                named.current = event.currentTarget.closest('[data-crew-card]')?.querySelector('h3') ?? null
                takeBack.send({ absenceId: one.id, version: one.version })
              }}
            >
              Take back
            </Button>
          </li>
        ))}
      </ul>
      {takeBack.error ? <Problem happened={readFailure(takeBack.error).message} /> : null}
    </>
  )
}
