/** The part of steps.mjs that is tested. */
interface Report {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly testResults: readonly { readonly status: string; readonly assertionResults: readonly { readonly status: string }[] }[]
}

export function countVitest(json: Report | null, ok: boolean): { readonly passed: number; readonly failed: number }
