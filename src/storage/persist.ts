// Asks the browser not to clear the plans when space gets tight. Some browsers ask the person, some decide themselves;
// either answer is fine, and nothing depends on it.

/** True when the plans are kept until the person removes them; false when the browser would not promise it, or can't. */
export async function askPersistent(): Promise<boolean> {
  try {
    if (await navigator.storage.persisted()) return true;
    return await navigator.storage.persist();
  } catch {
    return false; // no storage manager here (an insecure address, an old browser)
  }
}
