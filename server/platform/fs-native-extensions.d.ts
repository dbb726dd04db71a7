/** The part we use; the package brings no types. */
declare module 'fs-native-extensions' {
  const fsExtensions: {
    /** False when another open file holds the lock. Linux: open-file-description locks; freed on close. */
    tryLock(descriptor: number): boolean;
  };
  export default fsExtensions;
}
