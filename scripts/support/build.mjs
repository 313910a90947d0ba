import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { root } from './paths.mjs'
import { PlainError } from './say.mjs'

/** Runs a tool of the project to its end, its output shown; throws one sentence when it fails. */
export function runTool(name, args, env = {}) {
  const tool = path.join(root, 'node_modules/.bin', name)
  const { status, error } = spawnSync(tool, args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  })
  if (error) throw error
  return status ?? 1
}

/** Makes the Prisma client from the schema; skipped when neither changed. */
export function generateClient() {
  if (runTool('turbo', ['run', 'generate', '--output-logs=errors-only', '--log-order=grouped']) !== 0)
    throw new PlainError('The database client could not be made from prisma/schema: the lines above say where.')
}
