import 'server-only'
import type { Who } from '@almanac/identity/who'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'
import { cache } from 'react'
import { identify } from './admit.ts'
import { requestContext } from './request-context.ts'
import { toWireError } from './wire-error.ts'

/** Who is signed in, read once for a page and its layout; sends others to the sign-in page. */
export const signedIn = cache(async (): Promise<Who> => {
  const context = requestContext(await headers())
  try {
    return await identify(context)
  } catch (error) {
    const wire = toWireError(error, context)
    if (wire.data.code === 'unauthenticated' || wire.data.code === 'forbidden') redirect('/sign-in')
    throw wire
  }
})
