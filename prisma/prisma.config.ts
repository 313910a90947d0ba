import { defineConfig } from 'prisma/config'

export default defineConfig({
  schema: 'schema',
  migrations: { path: 'migrations' },
  // `generate` needs no database; everything else works as the role that owns it.
  datasource: { url: process.env.MIGRATION_DATABASE_URL ?? '' },
})
