/** How much waits for a person, shown where the app is not in front: in the page's title and on its icon. */
export interface Badge {
  show(count: number): void
}
