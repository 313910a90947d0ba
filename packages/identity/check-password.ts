import { identityClient } from '@almanac/database/client'
import { forgetTries } from '@almanac/database/sql/count-sign-in'
import { AppError } from '@almanac/runtime/errors'
import { verifyInTurn } from './password-queue.ts'
import { countPasswordChange } from './sign-in-limits.ts'

/** Refuses whoever is signed in and doesn't know the present password, which is not guessed at. */
export async function checkPassword(personId: string, password: string): Promise<void> {
  const key = await countPasswordChange(personId)
  const account = await identityClient().account.findFirst({ where: { userId: personId, providerId: 'credential' } })
  if (!account?.password || !(await verifyInTurn({ hash: account.password, password })))
    throw new AppError('invalid', 'The present password is wrong. Nothing was changed; check it and try again.')
  await forgetTries(key)
}
