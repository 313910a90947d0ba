import { useWords } from '@almanac/words/use-words'
import type { Words } from '@almanac/words/words'
import type { UseComboboxReturnValue } from 'downshift'
import Link from 'next/link'
import { useId } from 'react'
import { readFailure } from '../failure.ts'
import { usePermission } from '../providers.tsx'
import type { FindGroup, FindOption } from './find-options.ts'

type Props = {
  box: UseComboboxReturnValue<FindOption>
  shown: boolean
  text: string
  groups: readonly FindGroup[]
  near: boolean
  settled: boolean
  error: Error | null
  onLeave: () => void
}

function countWords({ groups, near, settled, shown }: Pick<Props, 'groups' | 'near' | 'settled' | 'shown'>, words: Words<'find'>): string {
  if (!shown || !settled) return ''
  const count = groups.reduce((sum, group) => sum + group.options.length, 0)
  return count === 0 ? words('none') : words(near ? 'nearResults' : 'results', { count })
}

/** What was found, by kind; a sentence and the next useful act where nothing was. */
export function FindAnswers({ box, shown, text, groups, near, settled, error, onLeave }: Props) {
  const id = useId()
  const words = useWords('find')
  const pages = useWords('page')
  const mayAdd = usePermission('change:site')
  const none = groups.length === 0
  let index = 0
  return (
    <>
      <output className="sr-only">
        {error && shown ? readFailure(error).message : countWords({ groups, near, settled, shown }, words)}
      </output>
      <div
        className={`absolute top-full right-0 z-30 mt-px max-h-[min(34rem,calc(100dvh-5rem))] w-[30rem] max-w-full flex-col border border-ink bg-sheet text-base text-ink max-sm:w-full sm:max-w-[calc(100vw-4rem)] ${
          shown && (settled || !none) ? 'flex' : 'hidden'
        }`}
      >
        {near && !none ? <p className="border-b border-line px-3 py-2 text-small text-soft">{words('near')}</p> : null}
        {/* The list scrolls itself, for the keys of its field move through it: a box around it would have to take the focus. */}
        <div {...box.getMenuProps()} className="min-h-0 overflow-y-auto">
          {shown
            ? groups.map((group) => (
                // biome-ignore lint/a11y/useSemanticElements: a listbox groups its options by this role; a fieldset is for forms
                <div
                  key={group.title}
                  role="group"
                  aria-labelledby={`${id}-${group.title}`}
                  className="border-b border-line last:border-b-0"
                >
                  <div id={`${id}-${group.title}`} className="px-3 pt-2 text-small text-soft">
                    {group.title}
                  </div>
                  {group.options.map((option) => {
                    const place = index++
                    return (
                      <div
                        key={`${option.href} ${option.what}`}
                        {...box.getItemProps({ item: option, index: place })}
                        className={`flex min-h-control cursor-pointer items-baseline justify-between gap-4 border-l-3 px-3 py-1.5 ${
                          box.highlightedIndex === place ? 'border-ink bg-wash' : 'border-transparent'
                        }`}
                      >
                        <span className="min-w-0">
                          <span className="font-semibold">{option.what}</span>
                          {option.beside ? <span className="block truncate text-small text-soft">{option.beside}</span> : null}
                        </span>
                        {option.phone ? <span className="shrink-0 whitespace-nowrap">{option.phone}</span> : null}
                      </div>
                    )
                  })}
                </div>
              ))
            : null}
        </div>
        {none && error ? <p className="px-3 py-3">{readFailure(error).message}</p> : null}
        {none && !error ? (
          <p className="px-3 py-3">
            {words('nothing', { text: text.trim() })}{' '}
            {mayAdd ? (
              <Link href="/sites/new" onClick={onLeave} className="underline decoration-edge underline-offset-4">
                {pages('/sites/new')}
              </Link>
            ) : null}
          </p>
        ) : null}
      </div>
    </>
  )
}
