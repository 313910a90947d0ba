import type { ReactNode } from 'react'
import { type ButtonKind, buttonClass } from './button-class.ts'
import type { LinkLike } from './link-like.ts'

export type LinkButtonProps = { href: string; kind?: ButtonKind; wide?: boolean; link?: LinkLike; file?: boolean; children: ReactNode }

/** A link to another page that looks like a button. `file`: to one that is saved, whatever the page does meanwhile; as a page to go to, it is given up when this one moves on. */
export function LinkButton({ href, kind = 'line', wide, link: Link = 'a', file, children }: LinkButtonProps) {
  return (
    <Link href={href} className={buttonClass(kind, wide)} {...(file ? { download: '' } : {})}>
      {children}
    </Link>
  )
}
