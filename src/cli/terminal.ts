/** Where a command writes, and how it ends. Standard output holds only what was asked for; all else goes to the other one. */
export interface Terminal {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
  /** whether a person watches the other output, so that a line may be written over itself */
  readonly isWatched: boolean
}

/** 0 done and all well, 1 done and something is wrong with the coach, 2 could not be done, 3 a bug, 130 stopped by the person. */
export type ExitCode = 0 | 1 | 2 | 3 | 130

export function processTerminal(): Terminal {
  for (const stream of [process.stdout, process.stderr]) {
    // `… | head` closes the pipe early, which is no fault of anybody's
    stream.on('error', (reason: NodeJS.ErrnoException) => {
      if (reason.code === 'EPIPE') process.exit(process.exitCode ?? 0)
      throw reason
    })
  }
  return {
    out: (text) => void process.stdout.write(text.endsWith('\n') ? text : `${text}\n`),
    err: (text) => void process.stderr.write(text.endsWith('\n') || text.startsWith('\r') ? text : `${text}\n`),
    isWatched: process.stderr.isTTY === true,
  }
}
