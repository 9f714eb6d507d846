/** The least a Preact page can do from its own service worker: what the app's start is measured against. */
import { render } from 'preact'
import { trustScriptUrls } from '../../../src/app/start/trusted-urls'

const root = document.getElementById('app')
if (root === null) throw new Error('index.html has no #app')
render(<h1 id="step-heading">Nothing</h1>, root)
const { serviceWorker } = trustScriptUrls(window.trustedTypes, { serviceWorker: './sw.js', journalWorker: '' })
void navigator.serviceWorker.register(serviceWorker, { updateViaCache: 'none' })
