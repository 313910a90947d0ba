'use client'
import type { PhotographKind } from '@almanac/records/picture-kind'
import { Button } from '@almanac/ui/button'
import { FileButton } from '@almanac/ui/file-button'
import { Notice } from '@almanac/ui/notice'
import { useWords } from '@almanac/words/use-words'
import { useEffect, useState } from 'react'
import type { KeptPicture } from './picture-store.ts'
import { sumOf } from './picture-sum.ts'
import { shrinkPhotograph } from './shrink-photograph.ts'
import { usePictures } from './use-pictures.ts'

/** A kept picture as the page shows it, without asking the server. */
export function KeptImage({ bytes, alt, className }: { bytes: ArrayBuffer; alt: string; className: string }) {
  const [address, setAddress] = useState<string | null>(null)
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([bytes]))
    setAddress(made)
    return () => URL.revokeObjectURL(made)
  }, [bytes])
  // biome-ignore lint/performance/noImgElement: it lies on this device; there is nothing for the framework to fetch
  return address ? <img src={address} alt={alt} className={className} /> : null
}

function Kept({ row, onDrop }: { row: KeptPicture; onDrop: () => void }) {
  const words = useWords('photographs')
  if (row.taken.is !== 'photograph') return null
  const what = words(`kind/${row.taken.kind}`)
  return (
    <li className="flex items-center gap-3">
      <KeptImage bytes={row.taken.bytes} alt={what} className="h-20 w-28 rounded-sheet border border-line object-cover" />
      <span className="grow text-small">
        {what}
        <span className="block text-soft">{row.refused ?? (row.sent ? words('sent') : words('waits'))}</span>
      </span>
      {row.sent ? null : <Button onClick={onDrop}>{words('remove')}</Button>}
    </li>
  )
}

type Props = { visitId: string; kinds: readonly PhotographKind[] }

/** Takes the photographs that belong here, keeps them on this device and shows what was taken; they are sent when they can be. */
export function PhotographPart({ visitId, kinds }: Props) {
  const { rows, add, drop } = usePictures()
  const words = useWords('photographs')
  const [trouble, setTrouble] = useState<'cannotRead' | 'cannotKeep' | null>(null)
  const take = async (kind: PhotographKind, file: File) => {
    setTrouble(null)
    const bytes = await shrinkPhotograph(file).catch(() => null)
    if (!bytes) return setTrouble('cannotRead')
    await add(visitId, { is: 'photograph', kind, bytes, sha256: sumOf(bytes) }).catch(() => setTrouble('cannotKeep'))
  }
  const here = (rows ?? []).filter((one) => one.visitId === visitId && one.taken.is === 'photograph' && kinds.includes(one.taken.kind))
  if (kinds.length === 0) return null
  return (
    <div className="flex flex-col gap-3">
      <div className="flex flex-wrap gap-3">
        {kinds.map((kind) => (
          <FileButton key={kind} accept="image/*" camera onFile={(file) => void take(kind, file)}>
            {words('take', { what: words(`kind/${kind}`).toLowerCase() })}
          </FileButton>
        ))}
      </div>
      {trouble ? <Notice kind="mind">{words(trouble)}</Notice> : null}
      {here.length > 0 ? (
        <ul className="flex flex-col gap-2">
          {here.map((row) => (
            <Kept key={row.id} row={row} onDrop={() => void drop(row.id)} />
          ))}
        </ul>
      ) : null}
    </div>
  )
}
