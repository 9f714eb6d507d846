/** What every sheet of the run is handed. */
export interface SheetPartProps {
  onClose: () => void
}
