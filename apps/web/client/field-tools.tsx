'use client'
import { FoldOut } from '@almanac/ui/fold-out'
import { MenuMark } from '@almanac/ui/marks'
import { NavList } from '@almanac/ui/nav-list'
import { useWords } from '@almanac/words/use-words'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import { AccountActions } from './account-menu.tsx'
import { Find } from './find/find.tsx'
import { navigationFor } from './pages.ts'
import { useSession } from './providers.tsx'

/** What stands at the right of the tablet's head: the search, the other pages and the account, folded away. */
export function FieldTools() {
  const { me } = useSession()
  const words = useWords('common')
  const { nav, more } = navigationFor(me, usePathname(), useWords('page'))
  return (
    <>
      <Find fold="always" />
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
          <AccountActions />
        </div>
      </FoldOut>
    </>
  )
}
