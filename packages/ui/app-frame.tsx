import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { FoldOut } from './fold-out.tsx'
import type { LinkLike } from './link-like.ts'
import { MenuMark, MoreMark } from './marks.tsx'
import { type NavItem, NavList } from './nav-list.tsx'

export type AppFrameProps = {
  /** Product name, shown at the left and leading home. */
  product: string
  homeHref?: string
  /** The pages this role works in, six at most, in one line. */
  nav: readonly NavItem[]
  /** The rest, behind "More". */
  more: readonly NavItem[]
  search?: ReactNode
  /** Who is signed in, at the far right, and what folds out there. */
  person: string
  /** The company being worked in, for those who are in several. */
  company?: string
  account: ReactNode
  link?: LinkLike
  children: ReactNode
}

const entry = (current: boolean | undefined) =>
  `-mb-px flex items-center gap-1 border-b-3 pt-[3px] whitespace-nowrap ${
    current ? 'border-ink text-ink' : 'border-transparent text-soft hover:border-line hover:text-ink'
  }`

/** The sheet every office page is drawn on: skip link, one line with product, pages, search and account, and the main area. Narrow screens fold the pages away. */
export function AppFrame({
  product,
  homeHref = '/',
  nav,
  more,
  search,
  person,
  company,
  account,
  link: Link = 'a',
  children,
}: AppFrameProps) {
  const words = useWords('common')
  const behind = more.find((item) => item.current)
  const current = behind ?? nav.find((item) => item.current)
  return (
    <div className="flex min-h-dvh flex-col bg-paper text-ink">
      <a href="#main" className="absolute -top-20 left-4 z-30 border border-ink bg-sheet px-4 py-2 focus:top-2">
        {words('skip')}
      </a>
      <header className="relative flex min-h-14 items-stretch gap-x-2 border-b border-ink px-4 sm:gap-x-4 sm:px-9 xl:gap-x-6 print:hidden">
        <Link href={homeHref} className="mr-1 flex items-center text-lead font-semibold whitespace-nowrap">
          {product}
        </Link>
        <nav aria-label={words('main')} className="flex items-stretch gap-x-4 max-lg:hidden xl:gap-x-5">
          {nav.map((item) => (
            <Link key={item.href} href={item.href} aria-current={item.current ? 'page' : undefined} className={entry(item.current)}>
              {item.label}
            </Link>
          ))}
          {more.length > 0 ? (
            <FoldOut
              label={
                <>
                  {words('more')}
                  {behind ? <span className="sr-only">, {words('now', { page: behind.label })}</span> : null}
                  <MoreMark />
                </>
              }
              className={entry(behind !== undefined)}
            >
              <NavList items={more} link={Link} />
            </FoldOut>
          ) : null}
        </nav>
        <div className="flex min-w-0 grow items-center justify-end">{search}</div>
        <div className="flex items-stretch text-soft max-lg:hidden">
          <FoldOut
            className="flex items-center gap-1 whitespace-nowrap hover:text-ink"
            label={
              <>
                <span className="text-left leading-tight">
                  {person}
                  {company ? <span className="block text-small">{company}</span> : null}
                </span>
                <MoreMark />
              </>
            }
          >
            {account}
          </FoldOut>
        </div>
        <div className="-mr-2 flex lg:hidden">
          <FoldOut
            place="across"
            name={current ? `${words('menu')}, ${words('now', { page: current.label })}` : words('menu')}
            label={<MenuMark />}
            className="flex w-11 items-center justify-center hover:bg-wash"
          >
            <nav aria-label={words('main')}>
              <NavList items={[...nav, ...more]} link={Link} columns />
            </nav>
            <div className="mt-2 border-t border-line pt-2">
              <p className="px-2 pt-1 font-semibold">{person}</p>
              {account}
            </div>
          </FoldOut>
        </div>
      </header>
      <main id="main" tabIndex={-1} className="w-full max-w-[1600px] grow px-4 py-6 outline-none sm:px-9 sm:py-7 print:p-0">
        {children}
      </main>
    </div>
  )
}
