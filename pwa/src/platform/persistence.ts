/** Asks the browser to keep our data for good; null where it cannot be asked. */
export async function keepStorage(): Promise<boolean | null> {
  const { storage } = navigator as { storage?: StorageManager };
  if (!storage?.persist) return null;
  try {
    return (await storage.persisted()) || (await storage.persist());
  } catch {
    return null;
  }
}
