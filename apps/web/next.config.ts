import path from 'node:path'
import type { NextConfig } from 'next'

const root = path.resolve(import.meta.dirname, '../..')

/** Megabytes of words: read at the first question of a new password, not compiled. */
const PASSWORD_LISTS = ['@zxcvbn-ts/core', '@zxcvbn-ts/language-common', '@zxcvbn-ts/language-en']

const config: NextConfig = {
  output: 'standalone',
  outputFileTracingRoot: root,
  turbopack: { root },
  poweredByHeader: false,
  // Where the built server finds the processes it starts aside (scripts/standalone-assets.mjs); in development they run from their source.
  env: process.env.NODE_ENV === 'production' ? { ASIDE_FOLDER: 'asides' } : {},
  // Types are checked by a step of their own (`npm run types`), with the whole repository.
  typescript: { ignoreBuildErrors: true },
  // Compiled for the browser and the server alike: the packages are TypeScript source.
  transpilePackages: [
    '@almanac/contract',
    '@almanac/database',
    '@almanac/documents',
    '@almanac/files',
    '@almanac/forecast',
    '@almanac/identity',
    '@almanac/messages',
    '@almanac/operations',
    '@almanac/runtime',
    '@almanac/service-rules',
    '@almanac/softener',
    '@almanac/ui',
    '@almanac/units',
    '@almanac/words',
  ],
  serverExternalPackages: [
    'pg',
    'pg-boss',
    'pino',
    '@prisma/client',
    '@prisma/adapter-pg',
    '@react-pdf/renderer',
    'nodemailer',
    'date-holidays',
    ...PASSWORD_LISTS,
  ],
}
export default config
