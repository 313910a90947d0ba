import { storeUpload } from '@almanac/operations/imports/store-upload'
import { MOST_BYTES, refuseFile } from '@almanac/operations/imports/upload-limits'
import { asMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** The body, read piece by piece, so that a file beyond the limit is refused before it fills the memory. */
async function bodyWithin(request: Request): Promise<Uint8Array> {
  const tooLarge = refuseFile('The file is larger than 20 MB. Split the list into two files.')
  if (Number(request.headers.get('content-length') ?? 0) > MOST_BYTES) throw tooLarge
  const pieces: Uint8Array[] = []
  let size = 0
  const reader = request.body?.getReader()
  for (let piece = await reader?.read(); piece && !piece.done; piece = await reader?.read()) {
    size += piece.value.length
    if (size > MOST_BYTES) {
      await reader?.cancel()
      throw tooLarge
    }
    pieces.push(piece.value)
  }
  return Buffer.concat(pieces)
}

/** Takes a firm's file as the body, its name as ?name=; answers the draft's id. */
export function POST(request: Request) {
  return asMember(request, 'run:import', async ({ scope }) => {
    const fileName = new URL(request.url).searchParams.get('name') ?? 'unnamed'
    return Response.json(await storeUpload(scope, { fileName, bytes: await bodyWithin(request) }), { status: 201 })
  })
}
