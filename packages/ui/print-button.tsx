'use client'
import { Button, type ButtonProps } from './button.tsx'

/** Prints the page as it is laid out for paper. */
export function PrintButton({ kind = 'line', children = 'Print' }: Pick<ButtonProps, 'kind' | 'children'>) {
  return (
    <Button kind={kind} onClick={() => window.print()}>
      {children}
    </Button>
  )
}
