import type { CautionKind } from '@almanac/records/caution-kind'
import { useWords } from '@almanac/words/use-words'
import type { ReactNode } from 'react'
import { CautionBox } from './caution-box.tsx'

export type CautionProps = {
  kind: CautionKind
  /** Another word than the usual one. */
  word?: string
  children: ReactNode
}

/** A caution in the language of whoever looks. */
export function Caution({ kind, word, children }: CautionProps) {
  const words = useWords('hazard')
  return (
    <CautionBox kind={kind} word={word ?? words(kind)}>
      {children}
    </CautionBox>
  )
}
