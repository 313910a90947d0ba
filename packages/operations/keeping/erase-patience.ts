/** Every text of a company is looked through: seconds for fifty thousand sites. */
export const PATIENCE = { timeoutMs: 300_000 }
