export interface DocumentChange {
  readonly path: string
  readonly says: string
  readonly status: 'reissue' | 'new' | 'withdraw'
  readonly because: readonly string[]
  readonly onlyFigure: boolean
}
