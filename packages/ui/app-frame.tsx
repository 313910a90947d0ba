import type { ReactNode } from 'react'
import type { LinkLike } from './link-like.ts'

/** One entry of the main navigation. `current` marks the page being shown. */
export type NavItem = { href: string; label: string; current?: boolean }

export type AppFrameProps = {
  /** Product name, shown at the left and leading home. */
  product: string
  homeHref?: string
  nav: readonly NavItem[]
  /** Name of the company being worked in, and the person's role there. */
  company?: string
  role?: string
  /** Account menu, bell or the like, at the far right. */
  account?: ReactNode
  link?: LinkLike
  children: ReactNode
}

function Navigation({ nav, link: Link = 'a', className }: Pick<AppFrameProps, 'nav' | 'link'> & { className: string }) {
  return (
    <nav aria-label="Main" className={className}>
      {nav.map((item) => (
        <Link
          key={item.href}
          href={item.href}
          aria-current={item.current ? 'page' : undefined}
          className={`-mb-px block border-b-3 pt-1 pb-2 lg:pb-3 ${
            item.current ? 'border-ink text-ink' : 'border-transparent text-soft hover:border-line hover:text-ink'
          }`}
        >
          {item.label}
        </Link>
      ))}
    </nav>
  )
}

/** The sheet every office page is drawn on: skip link, header, navigation and main area. */
export function AppFrame({ product, homeHref = '/', nav, company, role, account, link: Link = 'a', children }: AppFrameProps) {
  const current = nav.find((item) => item.current)
  return (
    <div className="flex min-h-dvh flex-col bg-paper text-ink">
      <a href="#main" className="absolute -top-20 left-4 z-10 border border-ink bg-sheet px-4 py-2 focus:top-2">
        Skip to the page
      </a>
      <header className="print:hidden grid grid-cols-[1fr_auto] items-baseline gap-x-5 border-b border-ink px-4 pt-3 sm:px-9 sm:pt-4 lg:grid-cols-[auto_1fr_auto]">
        <Link href={homeHref} className="pb-3 text-lead font-semibold whitespace-nowrap">
          {product}
        </Link>
        <div className="pb-3 text-soft max-sm:contents sm:flex sm:items-baseline sm:gap-4 lg:order-3">
          {company ? (
            <span className="max-w-[38vw] truncate text-right text-soft max-sm:col-start-2 max-sm:row-start-2" title={company}>
              {company}
              {role ? <span className="max-sm:hidden"> · {role}</span> : null}
            </span>
          ) : null}
          <div className="whitespace-nowrap text-soft max-sm:justify-self-end">{account}</div>
        </div>
        <details key={current?.href} className="pb-2 max-sm:col-span-2 max-sm:col-start-1 max-sm:row-start-2 sm:hidden">
          <summary className="min-h-6 cursor-pointer">{current ? `Menu, now ${current.label}` : 'Menu'}</summary>
          <Navigation nav={nav} link={Link} className="grid grid-cols-2 gap-x-5 pt-2" />
        </details>
        <Navigation nav={nav} link={Link} className="col-span-2 flex flex-wrap gap-x-5 max-sm:hidden lg:order-2 lg:col-span-1 lg:gap-x-4" />
      </header>
      <main id="main" tabIndex={-1} className="w-full max-w-[1600px] grow px-4 py-6 outline-none sm:px-9 sm:py-7">
        {children}
      </main>
    </div>
  )
}
