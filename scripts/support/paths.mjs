import path from 'node:path'
import { fileURLToPath } from 'node:url'

/** The repository's top folder. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..')
/** What belongs to this clone and can be made again: locks of installing and building, served builds. Not in git. */
export const cloneDir = path.join(root, '.data')
/** Everything that is kept between runs: clusters, secrets, logs, which start runs. */
export const dataDir = process.env.DATA_DIR ? path.resolve(process.env.DATA_DIR) : cloneDir
