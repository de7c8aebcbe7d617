/** Holds the design beside the screen, so that deriving it never stops a drag. */

self.onmessage = ({ data }: MessageEvent<readonly { readonly name: string }[]>) =>
  self.postMessage(`Coaches on the desk: ${data.map(({ name }) => name).join(', ')}.`)
