// The arrows of the house plan as lint errors. What lies inside one file (the clock in a pure package, `use server`, barrels, length) is
// Biome's: see biome.json and scripts/lint/*.grit.
import path from 'node:path'
import { cruise } from 'dependency-cruiser'
import { forbidden } from './lint/arrows.mjs'
import { root } from './support/paths.mjs'

const notOurs = ['(^|/)\\.next/', '(^|/)\\.data/', '(^|/)next-env\\.d\\.ts$', '\\.css$']

/**
 * Reads every import below `folders` of `baseDir` and applies the rules.
 * Resolves to { violations: [{ rule, from, to, comment }], files, cycles: files that are in an import cycle }.
 */
export async function readArrows(baseDir, folders) {
  const options = {
    baseDir,
    validate: true,
    ruleSet: { forbidden },
    parser: 'swc', // TypeScript 7 has no interface that other tools could parse with
    tsPreCompilationDeps: true, // type imports count
    combinedDependencies: true,
    doNotFollow: { path: ['(^|/)node_modules/', '(^|/)generated/', '^\\.\\./'] },
    exclude: { path: baseDir === root ? [...notOurs, '^tests/planted/'] : notOurs },
  }
  const resolving = {
    exportsFields: ['exports'],
    conditionNames: ['import', 'node', 'default', 'types'],
    extensions: ['.ts', '.tsx', '.mjs', '.js', '.d.ts'],
    alias: { '@': path.join(baseDir, 'apps/web') },
  }
  const { output } = await cruise(folders, options, resolving)
  const comments = new Map(forbidden.map((rule) => [rule.name, rule.comment]))
  const cycles = output.modules
    .filter((module) => module.dependencies.some((dependency) => dependency.circular))
    .map((module) => module.source)
  const violations = output.summary.violations.map(({ rule, from, to }) => ({
    rule: rule.name,
    from,
    to,
    comment: comments.get(rule.name),
  }))
  return { violations, files: output.modules.length, cycles }
}

if (process.argv[1] === import.meta.filename) {
  const { violations, files } = await readArrows(root, ['apps', 'packages', 'prisma', 'scripts', 'tests'])
  for (const { rule, from, to, comment } of violations) console.error(`${from} → ${to}\n  ${rule}: ${comment}\n`)
  console.log(violations.length ? `${violations.length} forbidden imports in ${files} files` : `arrows: ${files} files, none forbidden`)
  process.exit(violations.length ? 1 : 0)
}
