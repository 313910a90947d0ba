import type { FigureChange, FigureRow } from '@almanac/contract/firm'
import { figureValue, usualSource } from '@almanac/softener/firm/figure-value'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { useQuery } from '@tanstack/react-query'
import { usualBags } from '@/client/figure-words'
import { usePermission, useSession } from '@/client/providers'

/** One figure as the page shows it: what holds, what would be usual and from where, the firm's row, the last change. */
export type FigureLine = {
  key: string
  value: unknown
  usual: unknown
  source: string
  row: FigureRow | undefined
  last: FigureChange | undefined
}

/** What the firm's own figure is given up with: where there is no usual one, nothing takes its place. */
export const putBackWord = ({ usual }: Pick<FigureLine, 'usual'>) => (usual === null ? 'Remove' : 'Reset to default')

/** Changes to company settings and settings, newest first; nothing for those who may not read them. */
export function useChanges(): readonly FigureChange[] {
  const { api } = useSession()
  const owner = usePermission('manage:company')
  const { data } = useQuery({ ...api.firm.history.queryOptions({ input: { limit: 200 } }), enabled: owner })
  return data?.rows ?? []
}

/** The figures under these keys. */
export function useFigureLines(keys: readonly string[]): FigureLine[] {
  const { api, me, figures } = useSession()
  const { data } = useQuery({ ...api.firm.figures.queryOptions(), initialData: { rows: me.figures } })
  const changes = useChanges()
  const bags = usualBags(me.company)
  return keys.map((key) => {
    const fallback = key === 'bags' ? bags : null
    return {
      key,
      value: figureValue(figures, key) ?? fallback,
      usual: figureValue(USUAL_FIGURES, key) ?? fallback,
      source: usualSource(USUAL_FIGURES, key),
      row: data.rows.find((row) => row.key === key),
      last: changes.find((change) => change.field === key),
    }
  })
}
