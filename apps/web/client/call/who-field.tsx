'use client'
import { FindInput } from '@almanac/ui/find-input'
import { useEffect, useRef, useState } from 'react'
import type { FindOption } from '../find/find-options.ts'
import { useFindBox } from '../find/use-find-box.ts'
import { useFindings } from '../find/use-findings.ts'

/** Who is on the telephone: a site on record, or what was typed of somebody who is on none. */
export type Caller = { siteId: string; what: string } | { siteId: null; typed: string }

type Option = { key: string; what: string; beside: string; phone?: string; caller: Caller }

const SITE = /^\/sites\/([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})$/

const optionOf = ({ href, what, beside, phone }: FindOption): Option[] => {
  const siteId = SITE.exec(href)?.[1]
  return siteId
    ? [{ key: `${href} ${what}`, what, beside, phone, caller: { siteId, what: [what, beside].filter(Boolean).join(', ') } }]
    : []
}

/** One field for who calls: part of a name, street, number or mail, slips forgiven. Enter takes the first; somebody on no record is kept as typed. */
export function WhoField({ onTake }: { onTake: (caller: Caller) => void }) {
  const [text, setText] = useState('')
  const { groups, near, settled } = useFindings(text)
  const field = useRef<HTMLInputElement>(null)
  // After the dialog has opened, which gives the focus to its first button.
  useEffect(() => {
    const opened = setTimeout(() => field.current?.focus())
    return () => clearTimeout(opened)
  }, [])
  const typed = text.trim()
  const found = groups.flatMap((group) => group.options).flatMap(optionOf)
  const unknown: Option = { key: 'new', what: `Not on record: keep “${typed}”`, beside: '', caller: { siteId: null, typed } }
  const options = typed.length < 2 || !settled ? [] : [...found, unknown]
  const box = useFindBox<Option>({ options, text, onText: setText, onTake: ({ caller }) => onTake(caller) })
  return (
    <div className="relative flex flex-col gap-1">
      <span aria-hidden="true" className="font-medium">
        Who is calling
      </span>
      <FindInput
        label="Who is calling"
        labelProps={box.getLabelProps()}
        placeholder="Name, street, phone or email"
        inputProps={box.getInputProps({
          ref: field,
          onChange: (event) => setText(event.currentTarget.value),
          // Enter with nothing found yet must not send the form.
          onKeyDown: (event) => {
            if (event.key === 'Enter') event.preventDefault()
          },
        })}
      />
      <div
        {...box.getMenuProps()}
        className={`border border-ink bg-sheet ${box.isOpen && options.length > 0 ? 'max-h-72 overflow-y-auto' : 'hidden'}`}
      >
        {box.isOpen
          ? options.map((option, index) => (
              <div
                key={option.key}
                {...box.getItemProps({ item: option, index })}
                className={`flex min-h-control cursor-pointer items-baseline justify-between gap-4 border-l-3 px-3 py-1.5 ${
                  box.highlightedIndex === index ? 'border-ink bg-wash' : 'border-transparent'
                }`}
              >
                <span className="min-w-0">
                  <span className="font-semibold">{option.what}</span>
                  {option.beside ? <span className="block text-small text-soft">{option.beside}</span> : null}
                </span>
                {option.phone ? <span className="shrink-0 whitespace-nowrap">{option.phone}</span> : null}
              </div>
            ))
          : null}
      </div>
      <output className="text-small text-soft">{near && settled && found.length > 0 ? 'No exact match. These are close.' : ''}</output>
    </div>
  )
}
