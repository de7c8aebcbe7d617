/** The built screens of the desk: built by scripts/build-web.mjs when something they are made of is newer. */
import { execFile } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'

const SCRIPT = fileURLToPath(new URL('../../scripts/build-web.mjs', import.meta.url))

/** The folder they stand in; throws where src/web/ does not build. A process of its own: what builds them is large and is not needed once they are there. */
export async function builtWeb(): Promise<string> {
  try {
    const { stdout } = await promisify(execFile)(process.execPath, [SCRIPT])
    return stdout.trim()
  } catch {
    throw new Error('the screens of the desk could not be built; node scripts/build-web.mjs says why')
  }
}
