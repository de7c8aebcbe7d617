/** Placeholder replaced by the formula kit. */
export interface Worked<U extends string = string> {
  readonly value: number
  readonly unit: U
  readonly formula: string
  readonly inputs: Readonly<Record<string, number | Worked>>
  readonly cautions?: readonly string[]
}
