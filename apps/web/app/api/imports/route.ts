import { storeUpload } from '@almanac/operations/imports/store-upload'
import { fileTooLarge, MOST_BYTES } from '@almanac/operations/imports/upload-limits'
import { withMember } from '@/server/route-handler'
import { withUploadedFile } from '@/server/uploaded-file'

export const dynamic = 'force-dynamic'

/** Takes a firm's file as the body, its name as ?name=; answers the import's id. The worker reads it, and the import says how that went. */
export function POST(request: Request) {
  return withMember(request, 'run:import', async ({ scope }) => {
    const fileName = new URL(request.url).searchParams.get('name') ?? 'unnamed'
    const stored = await withUploadedFile(request, scope.companyId, MOST_BYTES, fileTooLarge(), (file) =>
      storeUpload(scope, { fileName, file }),
    )
    return Response.json(stored, { status: 201 })
  })
}
