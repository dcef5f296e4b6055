import { useEffect } from "react";

/** A key of a page: what it is called in the list, what it does, and what runs. */
export interface PageKey {
  readonly key: string;
  readonly does: string;
  readonly run: () => void;
}

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches("input:not([type=range]), select, textarea, [contenteditable]");

/** Listens for the keys of a page while it is open; never while a person types, nor behind an open dialog. */
export const usePageKeys = (keys: readonly PageKey[]): void => {
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (document.querySelector("dialog[open]") !== null) return;
      const found = keys.find((entry) => entry.key === event.key);
      if (found === undefined) return;
      event.preventDefault();
      found.run();
    };
    window.addEventListener("keydown", onKeyDown);
    return () => window.removeEventListener("keydown", onKeyDown);
  }, [keys]);
};
