const text = 'pannikin.erase'

/**
 * Word that the next start shall erase everything. It stands in the entry of this tab's history: that lives through a
 * reload and is gone with the tab, and looking at it before every start costs nothing, as asking a storage would.
 */
export const eraseNote = {
  isLeft: (): boolean => history.state === text,
  leave: (): void => history.replaceState(text, ''),
  remove: (): void => history.replaceState(null, ''),
}
