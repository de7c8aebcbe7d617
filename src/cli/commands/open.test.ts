import { type ChildProcess, spawn } from 'node:child_process'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { run } from '../run.js'

const root = fileURLToPath(new URL('../../..', import.meta.url))

async function said(...args: readonly string[]): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  const [out, err]: [string[], string[]] = [[], []]
  const code = await run(args, { out: (text) => void out.push(text), err: (text) => void err.push(text), isWatched: false })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

/** The child's first whole line; rejects when it ends before it said one. */
function firstLine(child: ChildProcess): Promise<string> {
  let [out, err] = ['', '']
  return new Promise((resolve, reject) => {
    child.stderr?.on('data', (some: Buffer) => {
      err += some.toString()
    })
    child.stdout?.on('data', (some: Buffer) => {
      out += some.toString()
      if (out.includes('\n')) resolve(out.slice(0, out.indexOf('\n')))
    })
    child.once('exit', (code) => reject(new Error(`ended with ${code} before it opened: ${err}`)))
  })
}

describe('open', () => {
  it('says where the desk is, in one line, and ends with 0 on Ctrl-C', async () => {
    const child = spawn(process.execPath, ['scripts/run.mjs', 'scripts/start.ts', '--no-browser', '--port', '0'], { cwd: root })
    try {
      const line = await firstLine(child)
      const url = line.match(/^The desk is open at (http:\/\/127\.0\.0\.1:\d+\/) \(Ctrl-C closes it\)\.$/)?.[1] ?? line
      expect(await (await fetch(url)).text()).toContain('<main id="desk">')
      const coaches = (await (await fetch(`${url}api/coaches`)).json()) as { path: string }[]
      expect(coaches[0]).toEqual({ path: 'examples/sedge-6.yaml', name: 'Sedge 6' })
      const ended = new Promise((resolve) => child.once('exit', (code) => resolve(code)))
      child.kill('SIGINT')
      expect(await ended).toBe(0)
    } finally {
      child.kill('SIGKILL')
    }
  })

  it('says in a sentence what it cannot open', async () => {
    const none = await said('open', 'examples/sedge-66.yaml', '--no-browser')
    expect([none.code, none.out]).toEqual([2, ''])
    expect(none.err).toContain('There is no file examples/sedge-66.yaml.')
    const port = await said('open', '--port', '70000', '--no-browser')
    expect([port.code, port.err.includes('whole number from 0 to 65535')]).toEqual([2, true])
  })

  it('says so when the port asked for is taken', async () => {
    const other = createServer()
    const taken = await new Promise<number>((resolve) => {
      other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port))
    })
    const { code, err } = await said('open', '--port', String(taken), '--no-browser')
    other.close()
    expect([code, err.split('.')[0]]).toEqual([2, `Port ${taken} of 127`])
    expect(err).toContain('Name another with --port')
  })
})
