/** WCAG 2.2 A and AA, as axe-core checks them. */
export const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** What of it a colour scheme may change: the rest is the same in both. */
export const rulesOfColour = ['color-contrast', 'link-in-text-block']
