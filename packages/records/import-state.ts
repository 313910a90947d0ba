/** The states of an import: its file is read, or refused for what it holds; then its rows wait as a draft, which may be discarded. */
export const importStates = ['reading', 'refused', 'draft', 'discarded', 'queued', 'applying', 'applied', 'undone', 'failed'] as const
export type ImportState = (typeof importStates)[number]

/** What became of a row of the file. */
export const importRowStatuses = ['pending', 'created', 'updated', 'unchanged', 'problem'] as const
export type ImportRowStatus = (typeof importRowStatuses)[number]

/**
 * What became of a row because of a value: the row was left out, the row goes in and its cell was left empty, or the row goes in as it stands and says something that a
 * person decides about ("deceased", "unit removed").
 */
export const rowProblemKinds = ['left-out', 'left-empty', 'decide'] as const
export type RowProblemKind = (typeof rowProblemKinds)[number]
