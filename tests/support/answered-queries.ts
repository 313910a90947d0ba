/** What pages are answered by path, as 'sites.page', instead of by a server. */
export const answers = new Map<string, unknown>()

type Options = { queryKey?: readonly unknown[]; initialData?: unknown }

/** A key is the company, then the procedure's path. */
const pathOf = ({ queryKey }: Options): string =>
  JSON.stringify(queryKey)
    .match(/"[\w-]+"/g)
    ?.map((one) => one.slice(1, -1))
    .slice(1, 3)
    .join('.') ?? ''

const still = { error: null, isPending: false, isSuccess: true, isFetching: false, isPlaceholderData: false, refetch: () => {} }

/** Stands in for the library's `useQuery`; a page that asks for what the test has not answered fails with its path. */
export function answered(options: Options) {
  if (options.initialData !== undefined) return { ...still, data: options.initialData }
  const path = pathOf(options)
  if (!answers.has(path)) throw new Error(`nothing answers ${path}`)
  return { ...still, data: answers.get(path) }
}

/** The same for lists that come page by page. */
export const answeredInPages = (options: Options) => ({
  ...answered(options),
  data: { pages: [answered(options).data] },
  ...{ hasNextPage: true, isFetchingNextPage: false, fetchNextPage: () => {} },
})
