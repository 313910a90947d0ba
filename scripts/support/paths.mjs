import path from 'node:path'
import { fileURLToPath } from 'node:url'

/** The repository's top folder. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..')
/** Everything the commands keep between runs: clusters, secrets, locks, served builds. Not in git. */
export const dataDir = path.join(root, '.data')
