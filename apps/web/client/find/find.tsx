'use client'
import { FindInput } from '@almanac/ui/find-input'
import { CloseMark, FindMark } from '@almanac/ui/marks'
import { useWords } from '@almanac/words/use-words'
import { useRouter } from 'next/navigation'
import { type ChangeEvent, type KeyboardEvent, useEffect, useRef, useState } from 'react'
import { FindAnswers } from './find-answers.tsx'
import type { FindOption } from './find-options.ts'
import { useOnSlash, useSlashKey } from './slash-key.ts'
import { useFindBox } from './use-find-box.ts'
import { useFindings } from './use-findings.ts'

/** Where the field is folded into a lens: on phones, or always (the tablet's head has a title to show). */
type Fold = 'phone' | 'always'

type FindProps = {
  fold?: Fold
  /** It came because somebody wants to search: the field stands open. */
  asked?: boolean
}

const folds: Record<Fold, { lens: string; field: string; unfolded: string; close: string }> = {
  phone: {
    lens: 'sm:hidden',
    field: 'max-sm:hidden sm:relative sm:flex sm:w-full sm:max-w-72',
    unfolded: 'flex w-full max-sm:absolute max-sm:inset-0 max-sm:z-20 max-sm:bg-paper max-sm:px-4 sm:relative sm:max-w-72',
    close: 'sm:hidden',
  },
  always: { lens: '', field: 'hidden', unfolded: 'absolute inset-0 z-20 flex bg-paper px-4 sm:px-7', close: '' },
}

/**
 * The one search: people, addresses, telephone numbers, tanks, jobs and pages. A combobox by ARIA: arrows choose, Enter opens, Escape closes, "/" leads here
 * from anywhere on the page.
 */
export function Find({ fold = 'phone', asked = false }: FindProps) {
  const router = useRouter()
  const words = useWords('find')
  const [text, setText] = useState('')
  const [unfolded, setUnfolded] = useState(asked)
  const input = useRef<HTMLInputElement>(null)
  const lens = useRef<HTMLButtonElement>(null)
  const { groups, near, settled, error } = useFindings(text)
  const options = groups.flatMap((group) => group.options)
  // Enter pressed before the answers to what was typed are in: the first of them opens as soon as they are.
  const opensFirst = useRef(false)
  const slash = useSlashKey()

  const leave = () => {
    setText('')
    setUnfolded(false)
    opensFirst.current = false
  }
  const open = (option: FindOption) => {
    leave()
    input.current?.blur()
    router.push(option.href)
  }
  const box = useFindBox<FindOption>({ options, text, onText: setText, onTake: open })
  const first = options[0]
  useEffect(() => {
    if (settled && opensFirst.current) {
      opensFirst.current = false
      if (first) open(first)
    }
  })
  useEffect(() => {
    if (unfolded) input.current?.focus()
  }, [unfolded])
  useOnSlash(() => (lens.current?.checkVisibility() ? setUnfolded(true) : input.current?.focus()))

  const shown = box.isOpen && text.trim() !== ''
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement> & { nativeEvent: { preventDownshiftDefault?: boolean } }) => {
    if (event.key === 'Enter' && !settled && box.highlightedIndex <= 0) {
      event.nativeEvent.preventDownshiftDefault = true
      event.preventDefault()
      opensFirst.current = true
    }
    if (event.key === 'Escape' && !shown && unfolded) {
      leave()
      lens.current?.focus()
    }
  }
  const onChange = (event: ChangeEvent<HTMLInputElement>) => {
    opensFirst.current = false
    setText(event.target.value)
  }
  const classes = folds[fold]
  return (
    <search className="flex min-w-0 grow justify-end">
      <button
        ref={lens}
        type="button"
        aria-label={words('label')}
        aria-expanded={unfolded}
        className={`flex min-h-control w-11 items-center justify-center in-[.field]:w-13 hover:bg-wash ${classes.lens}`}
        onClick={() => setUnfolded(true)}
      >
        <FindMark size={20} />
      </button>
      <div className={`items-center gap-2 ${unfolded ? classes.unfolded : classes.field}`}>
        <FindInput
          label={words('label')}
          labelProps={box.getLabelProps()}
          inputProps={box.getInputProps({ ref: input, onKeyDown, onChange })}
          placeholder={words('placeholder')}
          keyHint={slash.on && fold === 'phone' ? '/' : undefined}
        />
        {unfolded ? (
          <button
            type="button"
            aria-label={words('closeSearch')}
            className={`-mr-2 flex min-h-control w-11 shrink-0 items-center justify-center in-[.field]:w-13 hover:bg-wash ${classes.close}`}
            onClick={() => {
              leave()
              lens.current?.focus()
            }}
          >
            <CloseMark />
          </button>
        ) : null}
        <FindAnswers box={box} shown={shown} text={text} groups={groups} near={near} settled={settled} error={error} onLeave={leave} />
      </div>
    </search>
  )
}
