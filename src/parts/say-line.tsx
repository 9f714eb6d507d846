import type { ComponentChildren } from 'preact'

/** The sentence that leads to the number: "pH 5.38 now. Add". */
export const SayLine = ({ children }: { children: ComponentChildren }) => <p class="say-line">{children}</p>
