// Whether the sources are those of the build that is there: by what the disk says of each file, in a few hundredths of a second.
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import { cloneDir, root } from './paths.mjs'

const FOLDERS = ['apps', 'packages', 'prisma', 'scripts']
const FILES = ['package-lock.json', 'package.json', 'tsconfig.json', 'turbo.json', 'node_modules/.package-lock.json']
/** What tools make of the sources, or bring. */
const MADE = new Set(['node_modules', '.next', '.turbo', 'generated'])
const stamp = path.join(cloneDir, 'built-from.json')

/** Place, size and time of change of every source, as one short text. */
export function sourcesMark(from = root) {
  const hash = createHash('sha256').update(process.version)
  const add = (file) => {
    const { size, mtimeMs } = fs.statSync(file)
    hash.update(`${path.relative(from, file)}\0${size}\0${mtimeMs}\n`)
  }
  const walk = (folder) => {
    for (const entry of fs.readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1)))
      if (!MADE.has(entry.name)) {
        const place = path.join(folder, entry.name)
        if (entry.isDirectory()) walk(place)
        else if (entry.isFile()) add(place)
      }
  }
  for (const folder of FOLDERS) walk(path.join(from, folder))
  for (const file of FILES) if (fs.existsSync(path.join(from, file))) add(path.join(from, file))
  return hash.digest('hex')
}

/** Writes down which sources a finished build is of: those read before it began. */
export const noteBuild = (mark, id) => fs.writeFileSync(stamp, JSON.stringify({ mark, id }))

/** The id of the build of these very sources, when the last one was; undefined otherwise. */
export function buildOf(mark) {
  try {
    const noted = JSON.parse(fs.readFileSync(stamp, 'utf8'))
    return noted.mark === mark ? noted.id : undefined
  } catch {
    return undefined // none yet, or cut short
  }
}
