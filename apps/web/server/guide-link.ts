import 'server-only'
import { readGuideLink } from '@almanac/operations/guides/guide-link'
import type { Language } from '@almanac/records/language'
import { headers } from 'next/headers'
import { admit } from './admit.ts'
import { measurePath } from './public-paths.ts'
import { requestContext } from './request-context.ts'
import type { WireError } from './wire-error.ts'

/** What an owner's page shows, with where what they measure goes; null for a link that is not known. Reading it changes nothing. */
export async function readLinkedGuide(token: string, asked: { language?: Language | null; look?: string } = {}) {
  const context = requestContext(await headers())
  try {
    return await admit(context, { link: 'measure', token }, { link: 'measure', method: 'GET' }, async ({ record }) => {
      const guide = await readGuideLink({ companyId: record.companyId, guideId: record.id }, asked)
      return guide && { ...guide, sendTo: `/api${measurePath(token)}` }
    })
  } catch (error) {
    if ((error as WireError).data?.code === 'not-found') return null
    throw error
  }
}
