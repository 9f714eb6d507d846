import { useApp } from './app'
import { Bell } from './bell'
import { HealNotice } from './heal-notice'

/** What is said above every place: what rings, and what was mended between the two copies. */
export function Above() {
  const { bells } = useApp()
  return (
    <>
      {bells.ringing.value.length > 0 && <Bell />}
      <HealNotice />
    </>
  )
}
