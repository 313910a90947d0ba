'use client'
import { FoldOut } from '@almanac/ui/fold-out'
import { FindMark, MenuMark } from '@almanac/ui/marks'
import { NavList } from '@almanac/ui/nav-list'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import { useState } from 'react'
import { useOnSlash } from './find/slash-key.ts'
import { navigationFor } from './pages.ts'
import { Piece, piece, useBrought } from './piece.tsx'
import { useSession } from './providers.tsx'

const FIND = piece(() => import('./find/find.tsx').then((module) => module.Find))
const ACCOUNT = piece(() => import('./account-menu.tsx').then((module) => module.AccountActions))
const LATER = [FIND, ACCOUNT]

/** The search, which comes with the first press on its lens. */
function FindWhenAsked() {
  const words = useWords('find')
  const [asked, setAsked] = useState(false)
  useOnSlash(() => setAsked(true))
  if (asked) return <Piece of={FIND} give={{ fold: 'always', asked: true }} meanwhile={<span className="w-13" />} />
  return (
    <button
      type="button"
      aria-label={words('label')}
      aria-expanded={false}
      className="flex min-h-control w-13 items-center justify-center hover:bg-wash"
      onClick={() => setAsked(true)}
    >
      <FindMark size={20} />
    </button>
  )
}

/** What stands at the right of the tablet's head: the search, the other pages and the account, folded away. */
export function FieldTools() {
  useBrought(LATER)
  const { me } = useSession()
  const words = useWords('common')
  const { nav, more } = navigationFor(me, usePathname(), useWords('page'))
  return (
    <>
      <FindWhenAsked />
      <FoldOut
        place="across"
        name={words('menu')}
        label={<MenuMark />}
        className="-mr-2 flex min-h-control w-13 items-center justify-center hover:bg-wash"
      >
        <nav aria-label={words('main')}>
          <NavList items={[...nav, ...more]} link={Link} columns />
        </nav>
        <div className="mt-2 border-t border-line pt-2">
          <p className="px-2 pt-1 font-semibold">{me.person.name}</p>
          <Piece of={ACCOUNT} give={{}} />
        </div>
      </FoldOut>
    </>
  )
}
