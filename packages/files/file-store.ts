import { config } from '@almanac/runtime/config'
import { folderStore } from './folder-store.ts'
import { s3Store } from './s3-store.ts'
import type { FileStore } from './stored-file.ts'

let made: { url: string | undefined; folder: string; store: FileStore } | undefined

/** The store that the settings name: a bucket where FILES_URL is given, else a folder beside the other data. */
export function fileStore(): FileStore {
  const { FILES_URL: url, DATA_DIR: folder } = config()
  if (made?.url !== url || made?.folder !== folder) made = { url, folder, store: url ? s3Store(url) : folderStore(folder) }
  return made.store
}
