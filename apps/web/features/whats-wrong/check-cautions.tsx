import type { DiagnosisCaution } from '@almanac/softener/diagnosis/check-types'
import { Caution } from '@almanac/ui/caution'
import { useWords } from '@almanac/words/use-words'

/** What can hurt at a check or an advice: stands before it. */
export function CheckCautions({ cautions }: { cautions: readonly DiagnosisCaution[] }) {
  const words = useWords('diagnosisCautions')
  return cautions.map(({ kind, says }) => (
    <Caution key={says} kind={kind}>
      {words(says)}
    </Caution>
  ))
}
