import { useDisplay } from '@almanac/ui/display'
import { LinkButton } from '@almanac/ui/link-button'
import { Section } from '@almanac/ui/section'
import { plural } from './import-words.tsx'
import { RowsTable } from './rows-table.tsx'

/** The rows that could not be read, with the file to mend; and those something was taken for granted in. */
export function ProblemSection({ batchId, problems, noted }: { batchId: string; problems: number; noted: number }) {
  const display = useDisplay()
  return (
    <>
      {problems > 0 ? (
        <Section
          title={`${plural(problems, 'row', 'rows', display)} to mend`}
          actions={<LinkButton href={`/api/imports/${batchId}/problems`}>Download them to mend</LinkButton>}
        >
          <p className="mb-3 max-w-[70ch] text-soft">
            These rows are left out; all others go in. Mend them in the downloaded file and bring that in: the columns added to it are
            passed over.
          </p>
          <RowsTable batchId={batchId} only="problem" />
        </Section>
      ) : null}
      {noted > 0 ? (
        <Section title={`${plural(noted, 'row', 'rows', display)} with a note`}>
          <RowsTable batchId={batchId} only="noted" />
        </Section>
      ) : null}
    </>
  )
}
