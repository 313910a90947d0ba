// `npm run bench -- house`: the measures of the house plan, over the source files that git tracks.
import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'
import { readArrows } from '../lint-arrows.mjs'
import { root } from '../support/paths.mjs'

const isTest = (file) => /\.(test|spec)\.tsx?$|^tests\/|^packages\/operations\/[^/]+\/test-(firm|import)/.test(file)
const countLines = (file) => fs.readFileSync(path.join(root, file), 'utf8').split('\n').length - 1

/** Source that people write and read: no generated files, no violations planted for the linter. */
function sourceFiles() {
  const listed = execFileSync('git', ['ls-files', '-z', '*.ts', '*.tsx', '*.mjs', '*.css'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64e6,
  })
  return listed
    .split('\0')
    .filter((file) => file && !/(^|\/)generated\/|^tests\/planted\//.test(file) && fs.existsSync(path.join(root, file)))
}

/** The value below which a share of `sorted` lies: the nearest rank. */
const rank = (sorted, share) => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? 0

function importersOfTheClient(files) {
  const pattern = /from ['"](@prisma\/[^'"]*|pg|[^'"]*\/generated\/client(\.ts)?)['"]|import\(['"](@prisma\/|pg['"])/
  return files.filter(
    (file) => /^(apps|packages)\//.test(file) && !isTest(file) && pattern.test(fs.readFileSync(path.join(root, file), 'utf8')),
  )
}

/**
 * Names that more than one file of the product defines and exports, each with its files: two homes of a word, or one word for two things. `by` tells apart the names
 * that are one thing by design: a room of words in two languages, a group of procedures and its contract.
 */
function namesExportedTwice(files) {
  const homes = new Map()
  for (const file of files) {
    const text = fs.readFileSync(path.join(root, file), 'utf8')
    const names = text.matchAll(
      /^export (?:default )?(?:async )?(?:declare )?(?:abstract )?(?:const|let|function\*?|class|type|interface) (\w+)/gm,
    )
    for (const name of new Set([...names].map((match) => match[1]))) homes.set(name, [...(homes.get(name) ?? []), file])
  }
  const twice = [...homes].filter(([name, where]) => where.length > 1 && !FRAMEWORK_NAMES.has(name))
  const by = { languages: 0, contracts: 0, others: [] }
  for (const [name, where] of twice) {
    const left = where.filter((file) => !/^packages\/words\/e[ns]\//.test(file))
    if (left.length === 0) by.languages++
    else if (left.every((file) => /^packages\/contract\/|^apps\/web\/server\/procedures\//.test(file))) by.contracts++
    else by.others.push(name)
  }
  return { count: twice.length, by }
}

/** What the framework asks each page and route to export by that name. */
const FRAMEWORK_NAMES = new Set(['GET', 'POST', 'HEAD', 'OPTIONS', 'dynamic', 'metadata', 'generateMetadata', 'runtime'])

/** Shapes that a use case takes out of the contract a second time. */
const inferredInOperations = (files) =>
  files
    .filter((file) => file.startsWith('packages/operations/'))
    .reduce((sum, file) => sum + fs.readFileSync(path.join(root, file), 'utf8').split('z.infer<').length - 1, 0)

/** Files that write out three or more kinds of resin: one is the home, each further one a list that a new kind must find. */
const listingResinKinds = (files) =>
  files.filter((file) => {
    const text = fs.readFileSync(path.join(root, file), 'utf8')
    const kinds = ["'gel-8'", "'gel-10'", /'fine-(mesh|8)'/, "'unknown'"]
    return kinds.filter((kind) => (typeof kind === 'string' ? text.includes(kind) : kind.test(text))).length >= 3
  })

export default async function measure() {
  const files = sourceFiles().map((file) => ({ file, lines: countLines(file) }))
  const sorted = files.map(({ lines }) => lines).sort((a, b) => a - b)
  const largest = files.reduce((most, one) => (one.lines > most.lines ? one : most), { file: '', lines: 0 })
  const { cycles } = await readArrows(root, ['apps', 'packages', 'prisma', 'scripts', 'tests'])
  const importers = importersOfTheClient(files.map(({ file }) => file))
  const sum = (some) => some.reduce((total, { lines }) => total + lines, 0)
  const product = files.map(({ file }) => file).filter((file) => /^(apps|packages)\/.*\.tsx?$/.test(file) && !isTest(file))
  const twice = namesExportedTwice(product)
  const inferred = inferredInOperations(product)
  const resinLists = listingResinKinds(product)
  const testLines = sum(files.filter(({ file }) => isTest(file)))
  const codeLines = sum(files) - testLines
  const figures = {
    files: files.length,
    medianLines: rank(sorted, 0.5),
    p90Lines: rank(sorted, 0.9),
    largestLines: largest.lines,
    largestFile: largest.file,
    over250Lines: files.filter(({ lines }) => lines > 250).map(({ file }) => file),
    filesInImportCycles: cycles.length,
    importersOfDatabaseClient: importers,
    namesExportedTwice: twice.count,
    namesExportedTwiceBy: twice.by,
    inferredInOperations: inferred,
    filesListingResinKinds: resinLists,
    codeLines,
    testLines,
    testToCode: Number((testLines / codeLines).toFixed(2)),
  }
  console.log(`source files           ${figures.files}
median lines           ${figures.medianLines}
90th percentile        ${figures.p90Lines}
largest                ${figures.largestLines}  ${figures.largestFile}
over 250 lines         ${figures.over250Lines.length}  ${figures.over250Lines.join(', ')}
files in import cycles ${figures.filesInImportCycles}  ${cycles.join(', ')}
importers of client    ${importers.length}  ${importers.join(', ')}
names exported twice   ${twice.count}: ${twice.by.languages} rooms of words in two languages, ${twice.by.contracts} groups of procedures and their contract, ${twice.by.others.length} others: ${twice.by.others.join(', ')}
z.infer in operations  ${inferred}
files listing resins   ${resinLists.length}  ${resinLists.join(', ')}
code, test lines       ${codeLines}, ${testLines}
test to code           ${figures.testToCode}`)
  return figures
}
