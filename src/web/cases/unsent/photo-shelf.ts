const STORE = "photos";

/** Photos whose bytes the browser would not keep: held as long as this page is open. */
const held = new Map<string, Blob>();

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

const openPhotos = (): Promise<IDBDatabase> => {
  const request = indexedDB.open("underbench.unsent", 1);
  request.onupgradeneeded = () => request.result.createObjectStore(STORE);
  return answerOf(request);
};

/** Runs one request on the photos; `otherwise` where the browser keeps nothing (full, or switched off). */
const onPhotos = async <T>(
  mode: IDBTransactionMode,
  ask: (photos: IDBObjectStore) => IDBRequest<T>,
  otherwise: T,
): Promise<T> => {
  try {
    const database = await openPhotos();
    try {
      const transaction = database.transaction(STORE, mode);
      const written = new Promise<void>((resolve, reject) => {
        transaction.oncomplete = () => resolve();
        transaction.onabort = () => reject(transaction.error);
      });
      const [answer] = await Promise.all([answerOf(ask(transaction.objectStore(STORE))), written]);
      return answer;
    } finally {
      database.close();
    }
  } catch (cause) {
    if (cause instanceof DOMException) return otherwise;
    throw cause;
  }
};

/** SHA-256 of a photo in lower-case hex, as the store names it; null where the browser cannot compute it. */
export const hashPhoto = async (photo: Blob): Promise<string | null> => {
  if (!window.isSecureContext) return null;
  const digest = await crypto.subtle.digest("SHA-256", await photo.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
};

/** Keeps the bytes of a photo in this browser; false where they are only held until the page is closed. */
export const keepPhoto = async (hash: string, photo: Blob): Promise<boolean> => {
  const key = await onPhotos<IDBValidKey>("readwrite", (photos) => photos.put(photo, hash), "");
  if (key === hash) return true;
  held.set(hash, photo);
  return false;
};

/** The bytes of a photo that waits; null where this browser has them no longer. */
export const loadPhoto = async (hash: string): Promise<Blob | null> => {
  const standing = held.get(hash);
  if (standing !== undefined) return standing;
  const kept = await onPhotos<unknown>("readonly", (photos) => photos.get(hash), null);
  return kept instanceof Blob ? kept : null;
};

/** Lets the bytes of a photo go. */
export const dropPhoto = async (hash: string): Promise<void> => {
  held.delete(hash);
  await onPhotos("readwrite", (photos) => photos.delete(hash), undefined);
};
