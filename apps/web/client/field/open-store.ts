import { type DBSchema, type IDBPDatabase, openDB } from 'idb'

/**
 * A database of this browser: opened at the first call, and again where the browser closed it. A page that holds it lets go when a later release wants another
 * version, which would wait for ever for it.
 */
export function browserStore<S extends DBSchema>(name: string, make: (db: IDBPDatabase<S>) => void): () => Promise<IDBPDatabase<S>> {
  let opened: Promise<IDBPDatabase<S>> | undefined
  const forget = () => {
    opened = undefined
  }
  return () => {
    opened ??= openDB<S>(name, 1, {
      upgrade: make,
      blocking(_now, _wanted, event) {
        forget()
        ;(event.target as IDBDatabase).close()
      },
      terminated: forget,
    }).catch((error: unknown) => {
      forget()
      throw error
    })
    return opened
  }
}
