// First: it is evaluated before all others.
import './begin'
import { render } from 'preact'
import { AppProvider } from './app/app'
import { createApp } from './app/create-app'
import { latePlace } from './app/late-part'
import { loadWriting } from './app/load-writing'
import { pause } from './app/pause'
import { loadSentences } from './app/refusals'
import { type Places, Shell } from './app/shell'
import { lateUpdates } from './app/start/late-updates'
import { clock, erasing, ids, isLastShown, opening, urls } from './begin'
import { lateAlarm } from './devices/alarm/late-alarm'
import { lateAwake } from './devices/awake/late-awake'
import { webBadge } from './devices/badge/web-badge'
import { loadIcons } from './parts/icon'
import { BenchPlace } from './places/bench/view'
import { prepareRun } from './places/run/ready-run'
import { RunPlace } from './places/run/view'

const lazyParts = {
  start: () => import('./places/start/view'),
  formulas: () => import('./places/formulas/view'),
  materials: () => import('./places/materials/view'),
  records: () => import('./places/records/view'),
  setup: () => import('./places/setup/view'),
}

const places: Places = {
  bench: BenchPlace,
  run: RunPlace,
  start: latePlace(lazyParts.start, 'StartPlace'),
  formulas: latePlace(lazyParts.formulas, 'FormulasPlace'),
  materials: latePlace(lazyParts.materials, 'MaterialsPlace'),
  records: latePlace(lazyParts.records, 'RecordsPlace'),
  setup: latePlace(lazyParts.setup, 'SetupPlace'),
}

const onDemand = () => import('./devices/on-demand')

// Not awaited: parts that are fetched meanwhile import from this module, and would wait until it is done.
void start()

async function start(): Promise<void> {
  const alarm = lateAlarm(async () => (await onDemand()).webAlarm('./alarm.wav'))
  const update = lateUpdates(async () => {
    const { watchForUpdates } = await import('./app/start/updates')
    return watchForUpdates({
      serviceWorker: navigator.serviceWorker,
      scriptUrl: urls.serviceWorker,
      page: document,
      window,
      reload: () => location.reload(),
    })
  })
  const store = await opening
  const app = createApp({
    log: store.log,
    drafts: store.drafts,
    archive: store.archive,
    clock,
    ids,
    alarm,
    awake: lateAwake(async () => (await onDemand()).webAwake()),
    badge: webBadge('Pannikin'),
    share: {
      saveFile: async (...file) => (await onDemand()).webShare().saveFile(...file),
    },
    deviceKeys: async () => (await onDemand()).webDeviceKeys(await store.keyShelf()),
    slowHash: async () => (await onDemand()).webSlowHash(),
    pictures: async () => (await onDemand()).webPictures(),
    upkeep: {
      askToKeep: store.askToKeep,
      eraseFailed: (await erasing) === 'refused',
      eraseEverything: async () => {
        const { askToEraseHere } = await import('./store/erase-here')
        askToEraseHere()
        location.reload()
      },
    },
    window,
    update,
    loadDemonstration: async (to) => (await import('./demonstration')).loadHere(to),
  })
  const route = app.route.peek()
  await Promise.all([
    app.started,
    route.place === 'run' && prepareRun(app, route.batch),
    // With that in sight the live step may take a moment more, and can then be recorded at once.
    isLastShown && Promise.race([store.log.ready(), pause(150)]),
  ])
  const root = document.getElementById('app')
  if (root === null) throw new Error('no #app')
  root.replaceChildren()
  render(
    <AppProvider value={app}>
      <Shell places={places} />
    </AppProvider>,
    root,
  )
  document.documentElement.dataset.started = ''
  void store.log.ready().then(() => {
    document.documentElement.dataset.compared = ''
  })
  app.isShown()
  await app.calm
  alarm.load()
  update.load()
  warm()
}

/** What writing needs is fetched at once, every other place when the page is idle: all of it opens offline. */
function warm(): void {
  void loadWriting()
  void loadSentences()
  void loadIcons()
  const later = window.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 1500))
  later(() => {
    for (const fetchIt of Object.values(lazyParts)) void fetchIt()
  })
}
