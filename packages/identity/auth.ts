import { identityClient } from '@almanac/database/client'
import { config } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { twoFactor } from 'better-auth/plugins'
import { afterAuth, beforeAuth } from './auth-hooks.ts'
import { ADDRESS_HEADER } from './client-address.ts'
import { noting } from './lost-database.ts'
import { passkeys } from './passkey-rules.ts'
import { hashInTurn, verifyInTurn } from './password-queue.ts'
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from './password-rules.ts'

function build() {
  const { PUBLIC_URL, AUTH_SECRET } = config()
  return betterAuth({
    baseURL: PUBLIC_URL,
    basePath: '/api/auth',
    secret: AUTH_SECRET,
    trustedOrigins: [new URL(PUBLIC_URL).origin],
    telemetry: { enabled: false },
    // What goes wrong goes into our log; a wrong password is no fault, and is written down as an event.
    logger: { level: 'error', log: (_level, message) => log().error({ from: 'sign-in' }, message) },
    // What is none of the library's own refusals comes out to whoever called, who says it as every other failure is said.
    onAPIError: { throw: true },
    database: prismaAdapter(noting(identityClient()), { provider: 'postgresql' }),
    // People are added by their company's owner, not by signing themselves up.
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: SHORTEST_PASSWORD,
      maxPasswordLength: LONGEST_PASSWORD,
      password: { hash: hashInTurn, verify: verifyInTurn },
    },
    user: { modelName: 'person' },
    session: {
      expiresIn: 14 * 24 * 3600,
      // What asks for more than a session asks for the password, however long ago that was given.
      freshAge: 0,
      // No cookie cache: a revoked session must end now.
      cookieCache: { enabled: false },
      additionalFields: { activeCompanyId: { type: 'string', required: false, input: false } },
    },
    appName: 'Rebed Almanac',
    plugins: [twoFactor(), passkeys()],
    // The library counts by address alone, and reads before it writes. Ours count by account and device too, in one statement (sign-in-limits).
    rateLimit: { enabled: false },
    hooks: { before: beforeAuth, after: afterAuth },
    advanced: {
      cookiePrefix: 'almanac',
      ipAddress: { ipAddressHeaders: [ADDRESS_HEADER] },
      // Said outright: by itself the library leaves the check out wherever NODE_ENV is "test".
      disableOriginCheck: false,
      useSecureCookies: PUBLIC_URL.startsWith('https://'),
      database: { generateId: () => newId() },
    },
  })
}

let built: ReturnType<typeof build> | undefined

/** The sign-in library, set up for this installation. Its tables are read by the identity login only. */
export function auth() {
  built ??= build()
  return built
}
