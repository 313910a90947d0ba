// Prisma's CLI with the WASM schema engine, so that it never downloads one.
// On Windows a script cannot stand in for the engine: there the CLI downloads its own, except for `generate`.
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import path from 'node:path'

const root = path.resolve(import.meta.dirname, '../../..')
const args = process.argv.slice(2)
const env = {
  ...process.env,
  PATH: [path.dirname(process.execPath), process.env.PATH].join(path.delimiter), // the stand-in runs under this Node too
  CHECKPOINT_DISABLE: '1',
  PRISMA_HIDE_UPDATE_MESSAGE: '1',
}
if (process.platform !== 'win32' || args[0] === 'generate') env.PRISMA_SCHEMA_ENGINE_BINARY ??= path.join(import.meta.dirname, 'rpc.mjs')
const cli = createRequire(path.join(root, 'package.json')).resolve('prisma/build/index.js')
const done = spawnSync(process.execPath, [cli, ...args, '--config', 'prisma/prisma.config.ts'], { cwd: root, env, stdio: 'inherit' })
process.exit(done.status ?? 1)
