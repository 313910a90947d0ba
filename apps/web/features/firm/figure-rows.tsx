'use client'
import { Button } from '@almanac/ui/button'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { useState } from 'react'
import { figureName, figureWords } from '@/client/figure-words'
import { useSession } from '@/client/providers'
import { EditFigure } from './edit-figure.tsx'
import { PutBack } from './put-back.tsx'
import { type FigureLine, putBackWord, useFigureLines } from './use-figures.ts'

/** Figures of one kind, each with its source, the firm's own where it set one, and who changed it last and why. */
export function FigureRows({ keys, owner }: { keys: readonly string[]; owner: boolean }) {
  const lines = useFigureLines(keys)
  const [editing, setEditing] = useState<FigureLine | null>(null)
  const [puttingBack, setPuttingBack] = useState<FigureLine | null>(null)
  return (
    <>
      <ul className="border-t border-line">
        {lines.map((line) => (
          <Figure key={line.key} line={line} onChange={owner ? () => setEditing(line) : null} onPutBack={() => setPuttingBack(line)} />
        ))}
      </ul>
      {editing ? (
        <EditFigure
          figureKey={editing.key}
          value={editing.value}
          row={lines.find((line) => line.key === editing.key)?.row}
          onClose={() => setEditing(null)}
        />
      ) : null}
      {puttingBack?.row ? <PutBack line={puttingBack} row={puttingBack.row} onClose={() => setPuttingBack(null)} /> : null}
    </>
  )
}

type Props = { line: FigureLine; onChange: (() => void) | null; onPutBack: () => void }

function Figure({ line, onChange, onPutBack }: Props) {
  const { me } = useSession()
  const { timeZone } = me.company
  const display = me.company
  const { key, value, usual, source, row, last } = line
  const own = row?.inUse === true
  const name = figureName(key, display, value)
  const valve = key.startsWith('valve:') ? (value as { tubeRule: string; seals: string }) : null
  return (
    <li className="grid grid-cols-1 gap-x-6 gap-y-1 border-b border-line py-2.5 sm:grid-cols-[minmax(9rem,2fr)_5fr_auto]">
      <span className="font-semibold">{name}</span>
      <div className="min-w-0">
        <span>{figureWords(key, value, display)}</span>
        {valve ? <span className="block text-small">{[valve.tubeRule, valve.seals].filter(Boolean).join(' ')}</span> : null}
        <span className="block text-small text-soft">
          {own
            ? `Your own value. ${usual === null ? 'No default' : `Default: ${figureWords(key, usual, display)} (${source})`}.`
            : usual === null
              ? 'There’s no default; set your own.'
              : `Default: ${source}.`}
        </span>
        {last ? (
          <span className="block text-small text-soft">
            {last.to === null ? 'Reset to default' : 'Changed'} by {last.who ?? 'someone no longer here'},{' '}
            {formatDay(dayIn(timeZone, last.at), display)}
            {last.note ? `: “${last.note}”` : ''}
          </span>
        ) : null}
      </div>
      {onChange ? (
        <span className="flex flex-wrap items-start gap-2 sm:justify-end">
          {own ? (
            <Button onClick={onPutBack} aria-label={`${putBackWord(line)}: ${name}`}>
              {putBackWord(line)}
            </Button>
          ) : null}
          <Button onClick={onChange} aria-label={`Edit: ${name}`}>
            Edit
          </Button>
        </span>
      ) : null}
    </li>
  )
}
