import { useSyncExternalStore } from "react";
import { browserShelf, isShelfKey } from "./browser-shelf.ts";
import { createOutbox, type OutboxState } from "./outbox.ts";
import { dropPhoto } from "./photo-shelf.ts";
import { sendDocument, sendLooks, sendPhoto } from "./send-entries.ts";

/** Pauses before another try, ms; the last one stays. */
const PAUSES = [1000, 2000, 4000, 8000, 15_000];

/** The one outbox of this window. */
export const outbox = createOutbox({
  shelf: browserShelf,
  sendDocument,
  sendLooks,
  sendPhoto,
  forgetPhoto: (hash) => void dropPhoto(hash),
  later: (turn, run) => void setTimeout(run, PAUSES[Math.min(turn, PAUSES.length) - 1]),
});

window.addEventListener("online", () => void outbox.send());
window.addEventListener("storage", ({ key }) => {
  if (isShelfKey(key)) outbox.reload();
});
void outbox.send();

/** What waits in this browser and what the store has acknowledged, as it changes. */
export const useOutbox = (): OutboxState => useSyncExternalStore(outbox.subscribe, outbox.state);
