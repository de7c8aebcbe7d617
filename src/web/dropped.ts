/** Files a person chose or dropped, as text by their names. */

/** Larger than any definition or hole list; a film dropped by mistake is not read. */
const LARGEST = 5 * 1024 * 1024

export async function filesOf(list: FileList | null): Promise<Readonly<Record<string, string>>> {
  const small = [...(list ?? [])].filter(({ size }) => size <= LARGEST)
  return Object.fromEntries(await Promise.all(small.map(async (file) => [file.name, await file.text()] as const)))
}

export const isDefinition = (name: string): boolean => /\.ya?ml$/i.test(name)

/** Hands a text over as a file of that name. */
export function handOver(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }))
  const link = document.createElement('a')
  link.href = url
  link.download = name
  link.click()
  // the download has its own hold on the text by the next turn
  setTimeout(() => URL.revokeObjectURL(url))
}
