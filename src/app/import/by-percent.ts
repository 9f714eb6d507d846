/** Passes on only what moves the figure on the screen: a file of thousands of batches tells of each. */
export function byPercent(tell: (fraction: number) => void): (fraction: number) => void {
  let told = 0
  return (fraction) => {
    const percent = Math.floor(fraction * 100)
    if (percent === told) return
    told = percent
    tell(fraction)
  }
}
