import 'server-only'
import { readWho, type Who } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import { headers } from 'next/headers'
import { redirect } from 'next/navigation'

/** Who is signed in, for a layout; sends others to the sign-in page. */
export async function signedIn(): Promise<Who> {
  try {
    return await readWho(await headers())
  } catch (error) {
    if (error instanceof AppError && (error.code === 'unauthenticated' || error.code === 'forbidden')) redirect('/sign-in')
    throw error
  }
}
