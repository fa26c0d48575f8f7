/** How much room this book takes of what the browser gives it, in bytes. */
export interface RoomUsed {
  readonly used: number;
  readonly given: number;
  /** The browser has promised not to clear it by itself. */
  readonly keptFast: boolean;
}

/** Undefined where the browser does not tell. */
export async function roomUsed(): Promise<RoomUsed | undefined> {
  const storage = manager();
  try {
    const [estimate, keptFast] = await Promise.all([storage?.estimate?.(), storage?.persisted?.()]);
    if (estimate?.usage === undefined || estimate.quota === undefined) return undefined;
    return { used: estimate.usage, given: estimate.quota, keptFast: keptFast === true };
  } catch {
    return undefined;
  }
}

/** Asks the browser not to clear the jobs when the device runs short of room. It may say no; nothing depends on it. */
export async function askToKeep(): Promise<void> {
  const storage = manager();
  try {
    if ((await storage?.persisted?.()) !== true) await storage?.persist?.();
  } catch {
    // The reminder to save to a file stands in.
  }
}

/** Missing on plain http and in old browsers, whatever the types say. */
function manager(): Partial<StorageManager> | undefined {
  return typeof navigator === 'undefined' ? undefined : (navigator.storage as StorageManager | undefined);
}
