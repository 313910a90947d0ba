// `node scripts/run.mjs prisma migrate dev --name …`: Prisma's CLI on the embedded PostgreSQL (or the one in MIGRATION_DATABASE_URL).
import { spawnSync } from 'node:child_process'
import { openEnvironment, readSettings } from './support/environment.mjs'
import { root } from './support/paths.mjs'
import { tellError } from './support/say.mjs'

const args = process.argv.slice(2)
const needsDatabase = ['migrate', 'db'].includes(args[0]) && !process.env.MIGRATION_DATABASE_URL
try {
  const environment = needsDatabase ? await openEnvironment(readSettings()) : undefined
  const done = spawnSync(process.execPath, ['packages/database/engine/prisma.mjs', ...args], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...environment?.urls },
  })
  await environment?.stop()
  process.exitCode = done.status ?? 1
} catch (error) {
  tellError(error)
}
process.exit()
