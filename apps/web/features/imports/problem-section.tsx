import type { ImportCounts } from '@almanac/contract/imports'
import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Section } from '@almanac/ui/section'
import { plural } from './import-words.tsx'
import { RowsTable } from './rows-table.tsx'

/** What a person must look at: rows left out, cells left empty, notes to decide about, with the file to fix; what changes on record, old and new; and the rows something was assumed in. */
export function ProblemSection({ batchId, counts }: { batchId: string; counts: ImportCounts }) {
  const display = useDisplay()
  const rows = (count: number) => plural(count, 'row', 'rows', display)
  const said = [
    counts.decide > 0 ? `${rows(counts.decide)} to decide about` : null,
    counts.leftEmpty > 0 ? `${rows(counts.leftEmpty)} with a cell left empty` : null,
    counts.problem > 0 ? `${rows(counts.problem)} left out` : null,
  ].filter(Boolean)
  return (
    <>
      {said.length > 0 ? (
        <Section title="To look at" actions={<LinkButton href={`/api/imports/${batchId}/problems`}>Download these rows</LinkButton>}>
          <p className="mb-3 max-w-[70ch] text-soft">
            {said.join(', ')}. Fix them in the downloaded file and import that: what was fixed is added, and the columns put behind yours
            are ignored.
          </p>
          <RowsTable batchId={batchId} only="problem" />
        </Section>
      ) : null}
      {counts.updated > 0 ? (
        <Section title={`${rows(counts.updated)} with a change`}>
          <RowsTable batchId={batchId} only="changed" />
        </Section>
      ) : null}
      {counts.noted > 0 ? (
        <Section title={`${rows(counts.noted)} with a note`}>
          <RowsTable batchId={batchId} only="noted" />
        </Section>
      ) : null}
    </>
  )
}
