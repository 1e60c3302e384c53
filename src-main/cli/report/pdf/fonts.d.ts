/** A file of a package as a data address: the build puts it into the bundle. */
declare module '*.ttf?inline' {
  const address: string
  export default address
}
