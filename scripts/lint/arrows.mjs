// The arrows of the house plan as rules for dependency-cruiser: who may import whom. Paths are those of files, from the repository's root;
// a package that is not there yet appears by the name it is imported by. Type imports count like any other.
const PURE = 'softener|forecast|dispatch|service-rules'
/** What every package may stand on: they know only themselves, and records the units. */
const BELOW = 'units|records'
/** And whose types they may name: an amount's words, in the reader's language, are an argument. */
const SPOKEN = 'words'

/** A package of ours, as a path or (unresolved) as a name. */
const ours = (names) => `(^|/)(packages|@almanac)/(${names})/`
// Tests, and what only they use: packages/operations/<domain>/test-firm.ts and the like.
const tests = '\\.test\\.tsx?$|^tests/|^packages/operations/[^/]+/test-(firm|import)[^/]*\\.ts$'

/** Libraries that are pure themselves, of numbers and of calendar rules: a well-kept one beats our own. */
const pureLibraries = '(^|/)node_modules/(@stdlib|fft\\.js|highs|rrule-temporal)/'

const rule = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to })

export const forbidden = [
  rule(
    'pure-imports-only-units-and-records',
    'A pure package imports its own files, units, records and numeric libraries: no React, Next, Prisma, zod, Node. Pass facts, time and seeds as arguments.',
    { path: `^packages/(${PURE})/`, pathNot: tests },
    { pathNot: ['^packages/$1/', ours(`${BELOW}|${SPOKEN}`), pureLibraries] },
  ),
  rule(
    'units-import-nothing',
    'Units know factors and formats alone.',
    { path: '^packages/units/', pathNot: tests },
    { pathNot: '^packages/units/' },
  ),
  rule(
    'records-import-only-units',
    'A record is values, types and words; what follows from them is a rule of a package above.',
    { path: '^packages/records/', pathNot: tests },
    { pathNot: ['^packages/records/', ours('units')] },
  ),
  rule(
    'words-import-only-records-and-their-library',
    'Words know the languages, their libraries and the page they are on alone; whoever speaks asks for a room of them.',
    { path: '^packages/words/', pathNot: tests },
    { pathNot: ['^packages/words/', ours('records'), '(^|/)node_modules/(use-intl|icu-minify|react)/'] },
  ),
  rule(
    'pure-packages-take-words-as-an-argument',
    'A pure package names the type of the words it is given; which language they are in is decided above it.',
    { path: `^packages/(${PURE})/`, pathNot: tests },
    { path: ours(SPOKEN), dependencyTypesNot: ['type-only'] },
  ),
  rule(
    'pure-packages-apart',
    'Softener, forecast, dispatch and service-rules never import each other: an operation brings them together.',
    { path: `^packages/(${PURE})/` },
    { path: ours(PURE), pathNot: '(^|/)(packages|@almanac)/$1/' },
  ),
  rule(
    'contract-imports-only-records-and-zod',
    'The contract describes requests and answers with records and zod alone, so that the browser can have it.',
    { path: '^packages/contract/', pathNot: tests },
    { pathNot: ['^packages/contract/', ours(BELOW), '(^|/)node_modules/(zod|@orpc/contract)/'] },
  ),
  rule(
    'runtime-imports-no-package',
    'Runtime is what every other room stands on.',
    { path: '^packages/runtime/' },
    { path: ['^apps/', ours('(?!runtime/)[^/]+')] },
  ),
  rule(
    'database-imports-only-runtime-records-and-units',
    'The database room knows records and the calendar, and no use case.',
    { path: '^packages/database/', pathNot: tests },
    { path: ['^apps/', ours('(?!(database|runtime|contract|records|units)/)[^/]+')] },
  ),
  rule(
    'database-imports-contract-types-only',
    'A read may be typed by the answer it makes; the schemas themselves are for the doors.',
    { path: '^packages/database/', pathNot: tests },
    { path: ours('contract'), dependencyTypesNot: ['type-only'] },
  ),
  rule(
    'only-database-imports-prisma',
    'One room holds the database client: elsewhere use inCompany, runCommand or a read of packages/database.',
    { path: '^(apps|packages)/', pathNot: ['^packages/database/', tests] },
    { path: ['(^|/)node_modules/(@prisma|prisma)/', '(^|/)(packages|@almanac)/database/generated/'] },
  ),
  rule(
    'only-database-and-runtime-import-the-driver',
    'The driver passes by the scoped transaction; runtime needs it to listen for notices.',
    { path: '^(apps|packages)/', pathNot: ['^packages/(database|runtime)/', tests] },
    { path: '(^|/)node_modules/(pg|postgres)/' },
  ),
  rule(
    'files-import-only-runtime',
    'The store of files knows bytes and names, no record and no use case.',
    { path: '^packages/files/', pathNot: tests },
    { path: ['^apps/', ours('(?!(files|runtime)/)[^/]+')] },
  ),
  rule(
    'only-files-imports-the-store',
    'One room talks to the bucket and unpacks pictures: elsewhere use packages/files.',
    { path: '^(apps|packages)/', pathNot: ['^packages/files/', tests] },
    { path: '(^|/)node_modules/(@aws-sdk|sharp)/' },
  ),
  rule(
    'identity-imports-only-database-records-and-runtime',
    'Sign-in stands beside the use cases.',
    { path: '^packages/identity/', pathNot: tests },
    { path: ['^apps/', ours('(?!(identity|database|runtime|records)/)[^/]+')] },
  ),
  rule(
    'operations-import-no-screen',
    'A use case knows no screen and no sign-in.',
    { path: '^packages/operations/', pathNot: tests },
    { path: ['^apps/', ours('ui|identity')] },
  ),
  rule(
    'operations-domains-apart',
    'Each domain is the only writer of its tables: bring two together through a task, or in the procedure.',
    { path: '^packages/operations/(?!shared/)([^/]+)/', pathNot: tests },
    { path: '(^|/)(packages|@almanac)/operations/[^/]+/', pathNot: '(^|/)(packages|@almanac)/operations/($1|shared)/' },
  ),
  rule(
    'operations-shared-imports-no-domain',
    'What several domains share stands below all of them.',
    { path: '^packages/operations/shared/', pathNot: tests },
    { path: '(^|/)(packages|@almanac)/operations/(?!shared/)[^/]+/' },
  ),
  rule(
    'ui-imports-only-softener-units-and-records',
    'Shared components know shapes, units and the words of records, no use case and no data.',
    { path: '^packages/ui/', pathNot: tests },
    { path: ['^apps/', ours('(?!(ui|softener|units|records|words)/)[^/]+'), '(^|/)node_modules/(next|@orpc|@tanstack/react-query)/'] },
  ),
  rule(
    'screens-import-no-database',
    'Routes and screens ask the contract; only apps/web/server, route handlers and start-up reach below it.',
    {
      path: '^apps/web/',
      pathNot: ['^apps/web/(?:server|front)/', '^apps/web/app/.*/route\\.ts$', '^apps/web/instrumentation[^/]*\\.ts$', tests],
    },
    { path: ours('database|operations|files|identity|runtime|forecast|dispatch') },
  ),
  rule(
    'features-apart',
    'One feature folder never imports another’s files: move what both need to packages/ui or apps/web/client.',
    { path: '^apps/web/features/([^/]+)/' },
    { path: '^apps/web/features/', pathNot: '^apps/web/features/$1/' },
  ),
  rule('packages-import-no-app', 'Apps stand on packages, never the other way.', { path: '^packages/' }, { path: '^apps/' }),
  rule('worker-imports-no-web', 'The two apps share packages, not files.', { path: '^apps/worker/' }, { path: '^apps/web/' }),
  rule('web-imports-no-worker', 'The two apps share packages, not files.', { path: '^apps/web/' }, { path: '^apps/worker/' }),
  rule(
    'code-imports-no-test',
    'Tests stand on code, never the other way.',
    { path: '^(apps|packages)/', pathNot: tests },
    { path: ['\\.test\\.tsx?$', '^tests/'] },
  ),
  rule('no-import-cycle', 'Files that import each other cannot be read or tested one by one.', {}, { circular: true }),
  rule('import-exists', 'The imported file or package is not there.', { pathNot: '^tests/planted/' }, { couldNotResolve: true }),
]
