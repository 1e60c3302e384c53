/** Put in by the build (scripts/build-facts.ts). */
declare const __PITCHLINE_VERSION__: string
declare const __PITCHLINE_COMMIT__: string
