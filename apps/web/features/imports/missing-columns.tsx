import type { ImportColumn } from '@almanac/contract/imports'
import { leftOutColumns, missingColumns } from '@almanac/service-rules/import/key-columns'
import { Notice } from '@almanac/ui/notice'

/** What the chosen columns leave unknown for every row, above everything else: a list whose dates were passed over looks complete. */
export function MissingColumns({ columns }: { columns: readonly ImportColumn[] }) {
  const mapping = { header: columns.map((column) => column.header), columns: [...columns] }
  const missing = missingColumns(mapping)
  if (missing.length === 0) return null
  const leftOut = leftOutColumns(mapping)
  return (
    <Notice kind="mind">
      <strong className="block font-semibold">The chosen columns leave this unknown:</strong>
      {missing.map(({ key, sentence }) => (
        <span key={key} className="block">
          {sentence}
        </span>
      ))}
      {leftOut.length > 0 ? <span className="block">Left out: {leftOut.join(', ')}. Does one of them say it?</span> : null}
    </Notice>
  )
}
