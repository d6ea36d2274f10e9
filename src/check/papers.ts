/** The two papers of `styles/tokens.css`, for what a style sheet does not reach: the browser's own bars, and the check. */
export const papers = { light: '#fbfaf6', dark: '#131517' } as const;
