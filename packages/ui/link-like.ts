import type { ElementType, ReactNode } from 'react'

/** What every link in this package is given. */
export type LinkProps = { href: string; className?: string; 'aria-current'?: 'page' | 'step'; children?: ReactNode }

/** A link component: plain `'a'`, or a router's own link, so that this package knows no router. */
export type LinkLike = ElementType<LinkProps>
