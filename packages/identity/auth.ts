import { identityClient } from '@almanac/database/client'
import { config } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { betterAuth } from 'better-auth'
import { prismaAdapter } from 'better-auth/adapters/prisma'
import { APIError, createAuthMiddleware } from 'better-auth/api'
import { whyNoDemoSignIn } from './demo-sign-in.ts'

function build() {
  const { PUBLIC_URL, AUTH_SECRET, SIGN_IN_TRIES_PER_MINUTE } = config()
  return betterAuth({
    baseURL: PUBLIC_URL,
    basePath: '/api/auth',
    secret: AUTH_SECRET,
    trustedOrigins: [new URL(PUBLIC_URL).origin],
    telemetry: { enabled: false },
    database: prismaAdapter(identityClient(), { provider: 'postgresql' }),
    // People are added by their company's owner, not by signing themselves up.
    emailAndPassword: { enabled: true, disableSignUp: true, minPasswordLength: 10 },
    hooks: {
      before: createAuthMiddleware(async ({ path, body }) => {
        const why = path === '/sign-in/email' ? whyNoDemoSignIn(String(body?.email ?? '')) : undefined
        if (why) throw new APIError('FORBIDDEN', { message: why, code: 'DEMO_ELSEWHERE' })
      }),
    },
    user: { modelName: 'person' },
    session: {
      expiresIn: 14 * 24 * 3600,
      // No cookie cache: a revoked session must end now.
      cookieCache: { enabled: false },
      additionalFields: { activeCompanyId: { type: 'string', required: false, input: false } },
    },
    // In the database, so that all processes count together.
    rateLimit: {
      enabled: true,
      storage: 'database',
      window: 60,
      max: 300,
      customRules: { '/sign-in/email': { window: 60, max: SIGN_IN_TRIES_PER_MINUTE } },
    },
    advanced: {
      cookiePrefix: 'almanac',
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
