import fs from 'node:fs/promises'
import path from 'node:path'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { type FileName, type FileStore, keyOf } from './stored-file.ts'

const noRoom = (cause: unknown) =>
  new AppError(
    'unavailable',
    'The server has no room for the file right now. Nothing was saved; it is sent again automatically.',
    {},
    cause,
  )

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code

/** Files in a folder of the server, a folder for each company, for the app's own user alone. */
export function folderStore(dataDir: string): FileStore {
  /** The comment is the bundler's: without it the build would look for the folder and take the whole repository along. */
  const fileOf = (name: FileName) => path.resolve(/* turbopackIgnore: true */ dataDir, 'files', keyOf(name))
  return {
    async put(name, bytes) {
      const file = fileOf(name)
      const half = `${file}.${newId()}.half`
      try {
        await fs.mkdir(path.dirname(file), { recursive: true, mode: 0o700 })
        await fs.writeFile(half, bytes, { mode: 0o600, flush: true })
        await fs.rename(half, file)
      } catch (error) {
        await fs.rm(half, { force: true })
        if (codeOf(error) === 'ENOSPC') throw noRoom(error)
        throw error
      }
    },
    get: (name) =>
      fs.readFile(fileOf(name)).catch((error: unknown) => {
        if (codeOf(error) === 'ENOENT') return null
        throw error
      }),
    remove: (name) => fs.rm(fileOf(name), { force: true }),
  }
}
