import { expect, it } from 'vitest'
import { openBrowser } from './browser.js'

it('fails with what it tried where no browser can be started', async () => {
  const gone = { name: 'a browser that is not there', path: () => 'no/such/browser' }
  await expect(openBrowser([gone])).rejects.toThrow(
    /^No browser could be started, so the desk was not tested\. .*CHROME_PATH.*a browser that is not there: /,
  )
})
