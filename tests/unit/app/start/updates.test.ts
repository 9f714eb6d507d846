import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { watchForUpdates } from '../../../../src/app/start/updates'

class FakeWorker extends EventTarget {
  readonly told: unknown[] = []
  postMessage(message: unknown): void {
    this.told.push(message)
  }
}

class FakeRegistration extends EventTarget {
  waiting: FakeWorker | null = null
  installing: FakeWorker | null = null
  looks = 0
  async update(): Promise<void> {
    this.looks += 1
  }
  /** A new version is found, fetched, and waits. */
  bring(): FakeWorker {
    const worker = new FakeWorker()
    this.installing = worker
    this.dispatchEvent(new Event('updatefound'))
    this.installing = null
    this.waiting = worker
    worker.dispatchEvent(new Event('statechange'))
    return worker
  }
}

class FakeContainer extends EventTarget {
  readonly asked: unknown[] = []
  constructor(
    readonly registration: FakeRegistration,
    public controller: object | null,
  ) {
    super()
  }
  async register(...args: unknown[]): Promise<FakeRegistration> {
    this.asked.push(args)
    return this.registration
  }
  control(): void {
    this.controller = {}
    this.dispatchEvent(new Event('controllerchange'))
  }
}

const world = (controlled: boolean) => {
  const registration = new FakeRegistration()
  const container = new FakeContainer(registration, controlled ? {} : null)
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState })
  const window = new EventTarget()
  const reload = vi.fn()
  const watch = () =>
    watchForUpdates({
      // Stands in for the browser's container: only what the watch touches is there.
      serviceWorker: container as unknown as ServiceWorkerContainer,
      scriptUrl: './sw.js',
      page: page as unknown as Document,
      window: window as unknown as Window,
      reload,
    })
  return { registration, container, page, window, reload, watch }
}

const settle = () => vi.advanceTimersByTimeAsync(0)

describe('updates', () => {
  beforeEach(() => void vi.useFakeTimers())
  afterEach(() => void vi.useRealTimers())

  it('[U1] a new version waits until it is asked to take over, then the page reloads once', async () => {
    const { registration, container, reload, watch } = world(true)
    const updates = watch()
    await settle()
    const worker = registration.bring()
    await vi.advanceTimersByTimeAsync(600_000)
    expect([updates.waiting.value, worker.told, reload.mock.calls.length]).toEqual([true, [], 0])
    updates.takeOver()
    updates.takeOver()
    container.control()
    await vi.advanceTimersByTimeAsync(5000)
    expect([worker.told, reload.mock.calls.length]).toEqual([['take-over'], 1])
  })

  it('[U1] reloads after two seconds where the browser never says that the new version is in', async () => {
    const { registration, reload, watch } = world(true)
    const updates = watch()
    await settle()
    registration.bring()
    updates.takeOver()
    await vi.advanceTimersByTimeAsync(1900)
    expect(reload).not.toHaveBeenCalled()
    await vi.advanceTimersByTimeAsync(200)
    expect(reload).toHaveBeenCalledTimes(1)
  })

  it('[U1] offers the version that waited since the last visit', async () => {
    const { registration, watch } = world(true)
    registration.waiting = new FakeWorker()
    const updates = watch()
    await settle()
    expect(updates.waiting.value).toBe(true)
  })

  it('[U2] the first version of all neither offers nor reloads anything', async () => {
    const { registration, container, reload, watch } = world(false)
    const updates = watch()
    await settle()
    registration.bring()
    registration.waiting = null
    container.control()
    await vi.advanceTimersByTimeAsync(5000)
    expect([updates.waiting.value, reload.mock.calls.length]).toEqual([false, 0])
  })

  it('[U1] a page whose version another page replaced is offered a reload, and not reloaded', async () => {
    const { container, reload, watch } = world(true)
    const updates = watch()
    await settle()
    container.control()
    await vi.advanceTimersByTimeAsync(5000)
    expect([updates.waiting.value, reload.mock.calls.length]).toEqual([true, 0])
    updates.takeOver()
    expect(reload).toHaveBeenCalledTimes(1)
  })

  it('[U3] looks for a new version at start, when seen again and when shown again, past every cache', async () => {
    const { registration, container, page, window, watch } = world(true)
    watch()
    await settle()
    expect(container.asked).toEqual([['./sw.js', { updateViaCache: 'none' }]])
    page.dispatchEvent(new Event('visibilitychange'))
    window.dispatchEvent(new Event('pageshow'))
    page.visibilityState = 'hidden'
    page.dispatchEvent(new Event('visibilitychange'))
    expect(registration.looks).toBe(3)
  })

  it('works on without service workers', () => {
    const { page, window, reload } = world(false)
    const updates = watchForUpdates({
      serviceWorker: undefined,
      scriptUrl: './sw.js',
      page: page as unknown as Document,
      window: window as unknown as Window,
      reload,
    })
    expect(updates.waiting.value).toBe(false)
  })
})
