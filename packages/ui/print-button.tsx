'use client'
import { useWords } from '@almanac/words/use-words'
import { Button, type ButtonProps } from './button.tsx'

/** Prints the page as it is laid out for paper. */
export function PrintButton({ kind = 'line', children }: Pick<ButtonProps, 'kind' | 'children'>) {
  const words = useWords('common')
  return (
    <Button kind={kind} onClick={() => window.print()}>
      {children ?? words('print')}
    </Button>
  )
}
