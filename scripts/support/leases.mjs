// Several commands may use one server or one built folder: each leaves a file with its process, and the last one out tidies up.
import fs from 'node:fs'
import path from 'node:path'
import { isAlive, self } from './alive.mjs'

/** Notes in `folder` that this process uses the thing; returns what takes the note away. */
export function takeLease(folder) {
  fs.mkdirSync(folder, { recursive: true })
  const file = path.join(folder, `${process.pid}-${Math.random().toString(36).slice(2)}`)
  fs.writeFileSync(file, JSON.stringify(self()))
  return () => fs.rmSync(file, { force: true })
}

/** How many living processes use it; notes of dead ones are removed. */
export function countLeases(folder) {
  let count = 0
  for (const name of fs.existsSync(folder) ? fs.readdirSync(folder) : []) {
    const file = path.join(folder, name)
    try {
      const { pid, mark } = JSON.parse(fs.readFileSync(file, 'utf8'))
      if (isAlive(pid, mark)) count++
      else fs.rmSync(file, { force: true })
    } catch (error) {
      if (error.code !== 'ENOENT') fs.rmSync(file, { force: true })
    }
  }
  return count
}
