'use client'
import { MOST_LOGO_BYTES, type Settings } from '@almanac/contract/firm'
import { Button } from '@almanac/ui/button'
import { FileButton } from '@almanac/ui/file-button'
import { Problem } from '@almanac/ui/problem'
import { useState } from 'react'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useCommand } from '@/client/use-command'

/** A file's bytes as base64. */
const asBase64 = (file: File) =>
  new Promise<string>((done, failed) => {
    const reader = new FileReader()
    reader.onerror = () => failed(reader.error)
    reader.onload = () => done(String(reader.result).replace(/^[^,]*,/, ''))
    reader.readAsDataURL(file)
  })

/** The logo of the company's papers: shown as it is kept, put in the place of another, or taken off. */
export function LogoPart({ settings: { logo, version } }: { settings: Settings }) {
  const { api } = useSession()
  const change = useCommand(api.firm.changeLogo.mutationOptions())
  const [unread, setUnread] = useState<string>()
  async function take(file: File) {
    setUnread(undefined)
    if (file.size > MOST_LOGO_BYTES) return setUnread('The logo’s file is larger than 600 kB. The old one was kept; choose a smaller file.')
    const picture = await asBase64(file).catch(() => null)
    if (picture === null) return setUnread('The file can’t be read. The old logo was kept; choose it again.')
    change.send({ version, picture })
  }
  const problem = unread ?? (change.error ? readFailure(change.error).message : undefined)
  return (
    <div className="mt-4">
      <p className="mb-2 max-w-[75ch] text-soft">
        Your logo heads letters, service reports and printed day sheets. PNG or JPEG, up to 600 kB.
      </p>
      {problem ? <Problem happened={problem} /> : null}
      {logo ? (
        // biome-ignore lint/performance/noImgElement: a file of a few kilobytes behind the session, which the framework's own images can't read
        <img
          src={`/api/logo?of=${version}`}
          alt="Your logo"
          width={logo.width}
          height={logo.height}
          className="mb-3 h-auto max-h-16 w-auto max-w-60 bg-white p-1"
        />
      ) : null}
      <div className="flex flex-wrap gap-3">
        <FileButton accept="image/png,image/jpeg" onFile={(file) => void take(file)}>
          {logo ? 'Choose another logo' : 'Choose a logo'}
        </FileButton>
        {logo ? (
          <Button busy={change.isPending} onClick={() => change.send({ version, picture: null })}>
            Remove logo
          </Button>
        ) : null}
      </div>
    </div>
  )
}
