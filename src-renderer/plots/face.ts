// As an address with the letters in it: a picture fetches nothing, and the page may fetch nothing either.
export { default as faceAddress } from '@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?inline'
