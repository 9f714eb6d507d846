import { useEffect, useState } from 'preact/hooks'
import { useApp } from './app'
import { type JarDue, readJarsLeft } from './jars-due'

/** What is left to be pulled, read again whenever something is written; null until it has been read. */
export function useJarsLeft(): readonly JarDue[] | null {
  const app = useApp()
  const [left, setLeft] = useState<readonly JarDue[] | null>(null)
  useEffect(() => {
    let here = true
    const read = () =>
      void readJarsLeft(app).then((jars) => {
        if (here) setLeft(jars)
      })
    read()
    const stop = app.log.onAppended(read)
    return () => {
      here = false
      stop()
    }
  }, [app])
  return left
}
