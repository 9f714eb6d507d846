/** Under this name, of this tab alone and gone with it, stands that the next start shall erase everything. */
export const eraseNote = 'pannikin.erase'

/** Looked at before every start; what erases is fetched only where it was asked for. */
export function isEraseAsked(): boolean {
  try {
    return sessionStorage.getItem(eraseNote) !== null
  } catch {
    // Where site data is blocked even looking at it throws; the start then goes on, and the log says what is refused.
    return false
  }
}
