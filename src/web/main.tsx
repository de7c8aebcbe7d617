/** The desk in the browser: what the worker answers, put on the screen. */
import { createSignal } from 'solid-js'
import { render } from 'solid-js/web'
import './fonts.css'
import { workOffline } from './offline.js'

function Desk() {
  const [says, setSays] = createSignal('The coach is being opened …')
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' })
  worker.onmessage = ({ data }: MessageEvent<string>) => setSays(data)
  worker.onerror = () => setSays('The desk could not start its worker. Reload the page; if that does not help, start Coachwright again.')
  fetch('/api/coaches')
    .then((answer) => answer.json())
    .then((coaches) => worker.postMessage(coaches))
    .catch(() => setSays('The desk does not answer. Start it again with npm start, then reload this page.'))
  return (
    <>
      <h1>Coachwright</h1>
      <p>{says()}</p>
    </>
  )
}

const desk = document.getElementById('desk')
if (!desk) throw new Error('index.html has no element with the id desk')
render(() => <Desk />, desk)
workOffline()
