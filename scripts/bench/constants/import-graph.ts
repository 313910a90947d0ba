import fs from 'node:fs'
import path from 'node:path'

const IMPORT = /(?:from|import)\s*\(?\s*'([^']+)'/g

/** The file a specifier names inside the copy, or null where it leads outside (a library, another package). */
export function fileOf(copy: string, from: string, specifier: string): string | null {
  const inside = specifier.match(/^@almanac\/(softener|units)\/(.+)$/)
  if (inside) return path.join(copy, 'packages', inside[1] as string, `${inside[2]}.ts`)
  return specifier.startsWith('.') ? path.resolve(path.dirname(from), specifier) : null
}

/** For each file, all files that reach it through imports, itself among them. */
export function dependents(copy: string, files: readonly string[]): Map<string, Set<string>> {
  const importers = new Map<string, string[]>()
  for (const file of files)
    for (const [, specifier = ''] of fs.readFileSync(file, 'utf8').matchAll(IMPORT)) {
      const target = fileOf(copy, file, specifier)
      if (target) importers.set(target, [...(importers.get(target) ?? []), file])
    }
  return new Map(files.map((file) => [file, reaching(file, importers)]))
}

function reaching(file: string, importers: Map<string, string[]>): Set<string> {
  const seen = new Set([file])
  const open = [file]
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (const importer of importers.get(next) ?? [])
      if (!seen.has(importer)) {
        seen.add(importer)
        open.push(importer)
      }
  return seen
}
