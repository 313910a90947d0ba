import path from 'node:path'
import type { NextConfig } from 'next'

const root = path.resolve(import.meta.dirname, '../..')

const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  {
    key: 'Content-Security-Policy',
    // Next's own start-up scripts are inline; everything else comes from this server.
    value: `default-src 'self'; script-src 'self' 'unsafe-inline'${process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''}; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self' data:; frame-ancestors 'none'; base-uri 'self'; form-action 'self'`,
  },
]

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
    '@almanac/forecast',
    '@almanac/identity',
    '@almanac/operations',
    '@almanac/runtime',
    '@almanac/service-rules',
    '@almanac/softener',
    '@almanac/ui',
    '@almanac/units',
  ],
  serverExternalPackages: ['pg', 'pg-boss', 'pino', '@prisma/client', '@prisma/adapter-pg', '@react-pdf/renderer'],
  headers: async () => [{ source: '/:path*', headers }],
}
export default config
