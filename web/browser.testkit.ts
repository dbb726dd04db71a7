/** What a browser has and jsdom does not: nothing has a size there, so nothing is ever resized. */
globalThis.ResizeObserver ??= class {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
};
