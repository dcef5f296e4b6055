import { type FunctionComponent, use } from "react";

/** A page whose program is fetched when it is first gone to, or beforehand. */
export type LazyPage = FunctionComponent & { readonly preload: () => Promise<void> };

const pages: LazyPage[] = [];

/**
 * A page that comes in a file of its own. The router fetches it together with what the page shows; where it does not come,
 * the page that stands for a fault is shown, and going there again tries anew.
 */
export const lazyPage = (load: () => Promise<FunctionComponent>): LazyPage => {
  let page: FunctionComponent | null = null;
  let coming: Promise<void> | null = null;
  const preload = (): Promise<void> => {
    coming ??= load().then(
      (loaded) => {
        page = loaded;
      },
      (cause: unknown) => {
        coming = null;
        throw new Error("A part of this program did not come.", { cause });
      },
    );
    return coming;
  };
  // biome-ignore lint/correctness/noComponentHookFactories: each is made once, where the routes are named
  const Page = () => {
    if (page === null) use(preload());
    const Loaded = page;
    return Loaded === null ? null : <Loaded />;
  };
  const lazy = Object.assign(Page, { preload });
  pages.push(lazy);
  return lazy;
};

/** Without anything done on a page the others are fetched after this long, ms. */
const UNTOUCHED_MS = 20_000;
const DONE_SOMETHING = ["pointerdown", "input"] as const;

/** Fetches every page that has not come yet; one that does not come is asked for again when somebody goes to it. */
const preloadPages = async (): Promise<void> => {
  await Promise.allSettled(pages.map((page) => page.preload()));
};

/**
 * Fetches every page that has not come yet, so that each opens where the program no longer answers: once something is
 * done on the page that was opened, or it has been read for a while, so that its own drawing is not kept waiting.
 */
export const preloadPagesInTime = (): void => {
  const stop = new AbortController();
  const begin = () => {
    stop.abort();
    clearTimeout(timer);
    requestIdleCallback(() => void preloadPages());
  };
  const timer = setTimeout(begin, UNTOUCHED_MS);
  for (const event of DONE_SOMETHING) addEventListener(event, begin, { signal: stop.signal, capture: true });
};
