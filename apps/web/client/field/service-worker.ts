/** The file that apps/web/field-worker makes; in development there is none, and pages come from the server alone. */
const FILE = '/field-worker.js'

/** Lets the browser keep the field's shell, so that a cold start needs no server; and asks it not to throw away what was written here when space runs short. */
export function startServiceWorker(): void {
  if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return
  navigator.serviceWorker.register(FILE).catch(() => {})
  void navigator.storage?.persist?.().catch(() => {})
}
