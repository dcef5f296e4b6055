import { type Browser, type BrowserContext, chromium } from "playwright-core";
import { findBrowser } from "./find-browser.ts";

/** What the page is seen on. */
export interface Screen {
  readonly width: number;
  readonly height: number;
  readonly theme?: "light" | "dark";
  readonly touch?: boolean;
}

export const desk: Screen = { width: 1440, height: 900 };
export const tablet: Screen = { width: 820, height: 1180, touch: true };

const startBrowser = async (): Promise<Browser> => {
  const browser = await findBrowser();
  return chromium.launch({
    headless: true,
    executablePath: browser.executablePath,
    args: [
      "--no-sandbox",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--disable-dev-shm-usage",
    ],
    env: { ...(process.env as Record<string, string>), LANG: "en_US.UTF-8", ...browser.env },
  });
};

let started: Promise<Browser> | null = null;

/**
 * The browser of this process, started when it is first asked for and ended with the process; throws (and the tests fail)
 * where none can be had.
 */
const launchBrowser = (): Promise<Browser> => {
  started ??= startBrowser();
  return started;
};

/** A fresh session without stored data. The locale is set because the bare C locale yields one that browsers reject. */
export const openSession = async (screen: Screen): Promise<BrowserContext> =>
  (await launchBrowser()).newContext({
    locale: "en-GB",
    timezoneId: "UTC",
    viewport: { width: screen.width, height: screen.height },
    colorScheme: screen.theme ?? "light",
    hasTouch: screen.touch ?? false,
    reducedMotion: "reduce",
    acceptDownloads: true,
  });
