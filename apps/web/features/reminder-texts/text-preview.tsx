'use client'
import { Button } from '@almanac/ui/button'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { TextInput } from '@almanac/ui/text-input'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useFindings } from '@/client/find/use-findings'
import { lengthWords } from '@/client/length-words'
import type { useTextPreview } from './use-text-preview.ts'

type About = { of: 'bed' | 'site'; id: string; words: string }

/** A site's or bed's page as what a text can be filled in for. */
function aboutOf(href: string, words: string): About | null {
  const [, page, id] = /^\/(sites|beds)\/([\w-]{36})$/.exec(href) ?? []
  return id === undefined ? null : { of: page === 'beds' ? 'bed' : 'site', id, words }
}

type Props = { preview: ReturnType<typeof useTextPreview>; about: About | null; onAbout: (about: About | null) => void }

/** How the text reads when it is filled in: for a made-up customer with a long name, or for any that is found. */
export function TextPreview({ preview, about, onAbout }: Props) {
  const display = useDisplay()
  const [typed, setTyped] = useState('')
  const { groups, settled } = useFindings(typed)
  const found = groups
    .flatMap((group) => group.options)
    .flatMap(({ href, what, beside }) => aboutOf(href, [what, beside].filter(Boolean).join(', ')) ?? [])
    .slice(0, 5)
  const { data, error } = preview
  return (
    <section aria-labelledby="preview" className="min-w-0">
      <h2 id="preview" className="mb-3 text-h2 font-semibold">
        Preview
      </h2>
      <TextInput
        label="Preview for a customer"
        placeholder="Customer, address or phone"
        autoComplete="off"
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
      />
      {typed.trim().length > 1 ? (
        <ul className="border-b border-line">
          {found.map((one) => (
            <li key={`${one.of} ${one.id}`} className="border-t border-line first:border-t-0">
              <button
                type="button"
                className="min-h-control w-full py-2 text-left underline decoration-edge underline-offset-4 hover:bg-wash"
                onClick={() => {
                  onAbout(one)
                  setTyped('')
                }}
              >
                {one.words}
              </button>
            </li>
          ))}
          {found.length === 0 && settled ? <li className="py-2 text-soft">Nobody found. Check the spelling.</li> : null}
        </ul>
      ) : null}
      <p className="mt-3 flex flex-wrap items-baseline gap-x-4 text-soft">
        {about ? `For ${about.words}` : 'For a made-up customer with a long name'}
        {about ? (
          <Button kind="quiet" onClick={() => onAbout(null)}>
            Made-up customer
          </Button>
        ) : null}
      </p>
      {error ? <Problem happened={readFailure(error).message} onRetry={() => void preview.refetch()} /> : null}
      {preview.isPending ? <Skeleton lines={8} label="Loading the preview" /> : null}
      {data?.wrong ? <p className="mt-3 text-soft">Nothing to show until the text can be filled in.</p> : null}
      {data?.body ? (
        <div className="mt-3 border border-line bg-sheet px-5 py-4" aria-live="polite">
          <p className="font-medium wrap-anywhere">{data.subject}</p>
          <p className="mt-3 whitespace-pre-line wrap-anywhere">{data.body}</p>
        </div>
      ) : null}
      {data?.text ? <p className="mt-3 text-small text-soft">{lengthWords(data.text, display)}</p> : null}
    </section>
  )
}
