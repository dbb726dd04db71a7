/** Stands in until a part is built. Removed with the last of them. */
export const notBuilt = <T extends object>(name: string): T =>
  new Proxy({} as T, {
    get: (_target, property) =>
      typeof property !== 'string' ||
      /^(then$|on[A-Z].*(Init|Bootstrap|Destroy|Shutdown)$|before)/.test(property)
        ? undefined
        : (): Promise<void> => {
            if (property === 'stop') return Promise.resolve();
            throw new Error(`${name}.${String(property)} is not built yet`);
          },
  });
