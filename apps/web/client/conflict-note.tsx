'use client'
import { Button } from '@almanac/ui/button'
import { Problem } from '@almanac/ui/problem'
import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { readFailure } from './failure.ts'

export type ConflictNoteProps = {
  /** Why the command failed; null shows nothing. */
  error: unknown
  /** What each sent value is called; values without a name are not shown. */
  names: Record<string, string>
  /** A value in words. */
  show?: (name: string, value: unknown) => string
  /** Send the same again over the present version. */
  onKeepMine: () => void
  /** Drop what was typed and begin from what stands now. */
  onTakeTheirs: () => void
  busy?: boolean
}

function plainly(value: unknown, words: Words<'saving'>): string {
  if (value === null || value === undefined || value === '') return words('nothing')
  if (typeof value === 'object' && 'value' in value && 'unit' in value) return `${value.value} ${value.unit}`
  return typeof value === 'boolean' ? words(value ? 'yes' : 'no') : String(value)
}

/**
 * What stands between a form and its saving. A failure is told in its own words; when someone else changed the record meanwhile, both values are shown side
 * by side and the person chooses which stands. What is behind the form is fetched again, so that the choice is made on the present version.
 */
export function ConflictNote({ error, names, show, onKeepMine, onTakeTheirs, busy }: ConflictNoteProps) {
  const words = useWords('saving')
  const shown = (name: string, value: unknown) => (show ? show(name, value) : plainly(value, words))
  const queries = useQueryClient()
  const failure = error ? readFailure(error) : null
  const conflict = failure?.code === 'version-conflict'
  // Until what stands now has been read, one's own would be sent over the version that was refused already.
  const [readFor, setReadFor] = useState<unknown>(null)
  useEffect(() => {
    if (conflict) void queries.invalidateQueries().then(() => setReadFor(error))
  }, [conflict, error, queries])
  if (!failure) return null
  if (!conflict) return <Problem happened={failure.message} kept={words('kept')} reference={failure.requestId || undefined} />
  const current = (failure.detail.current ?? {}) as Record<string, unknown>
  const sent = (failure.detail.sent ?? {}) as Record<string, unknown>
  const differing = Object.keys(sent).filter((key) => names[key] && JSON.stringify(sent[key]) !== JSON.stringify(current[key] ?? null))
  return (
    <section role="alert" className="my-4 border-l-4 border-bead bg-wash px-4 py-3">
      <p className="font-semibold">{failure.message}</p>
      {differing.length > 0 ? (
        <table className="mt-3 w-full text-left">
          <thead className="text-small text-soft">
            <tr>
              <th scope="col" className="py-1 pr-3 font-normal">
                {words('fact')}
              </th>
              <th scope="col" className="py-1 pr-3 font-normal">
                {words('theirs')}
              </th>
              <th scope="col" className="py-1 font-normal">
                {words('yours')}
              </th>
            </tr>
          </thead>
          <tbody>
            {differing.map((key) => (
              <tr key={key} className="border-t border-line align-top">
                <th scope="row" className="py-1.5 pr-3 font-normal text-soft">
                  {names[key]}
                </th>
                <td className="py-1.5 pr-3">{shown(key, current[key])}</td>
                <td className="py-1.5 font-medium">{shown(key, sent[key])}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        <p className="mt-1">{words('same')}</p>
      )}
      <div className="mt-3 flex flex-wrap gap-3">
        <Button onClick={onTakeTheirs}>{words('useTheirs')}</Button>
        <Button onClick={onKeepMine} busy={busy} busyLabel={words('saving')} disabled={readFor !== error}>
          {words('keepMine')}
        </Button>
      </div>
    </section>
  )
}
