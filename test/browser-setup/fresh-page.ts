import type { Page } from "playwright-core";
import { openSession, type Screen } from "./launch.ts";

/** A page of its own session, kept with what it can be given for. */
interface Kept {
  readonly page: Page;
  readonly touch: boolean;
}

/** Listeners a test may have put on a page. */
const HEARD = ["console", "dialog", "download", "filechooser", "pageerror", "request", "response"] as const;

/** A drawing of the program that runs nothing: what a page shows while what it stored is taken away. */
const STILL = "/mark.svg";

/** A program of a test's own may be gone: the page is not waited for longer than this, ms. */
const PATIENCE = 10_000;

let given: Kept[] = [];
let waiting: Kept[] = [];

/** Takes away what a page stored, heard and was sent through; false where the page can be of no further use. */
const wipe = async (page: Page): Promise<boolean> => {
  try {
    const session = page.context();
    await Promise.all(session.pages().map((other) => (other === page ? undefined : other.close())));
    for (const heard of HEARD) page.removeAllListeners(heard);
    await page.unrouteAll({ behavior: "ignoreErrors" });
    const { origin, protocol } = new URL(page.url());
    if (!protocol.startsWith("http")) return true;
    await page.goto(`${origin}${STILL}`, { timeout: PATIENCE });
    await page.evaluate(() => sessionStorage.clear());
    const client = await session.newCDPSession(page);
    await client.send("Storage.clearDataForOrigin", { origin, storageTypes: "all" });
    await client.send("Page.resetNavigationHistory");
    await client.detach();
    await session.clearCookies();
    return true;
  } catch {
    return false;
  }
};

/**
 * A page without stored data, history or listeners, on the screen asked for: one that an earlier test gave back, wiped, or
 * a new one. A new one takes twice as long to open its first sheet, since the browser reads the program's scripts anew.
 */
export const openPage = async (screen: Screen): Promise<Page> => {
  const touch = screen.touch ?? false;
  const kept = waiting.find((one) => one.touch === touch);
  if (kept === undefined) {
    const page = await (await openSession(screen)).newPage();
    given.push({ page, touch });
    return page;
  }
  waiting = waiting.filter((one) => one !== kept);
  given.push(kept);
  await kept.page.setViewportSize({ width: screen.width, height: screen.height });
  await kept.page.emulateMedia({ colorScheme: screen.theme ?? "light" });
  return kept.page;
};

/** Takes every given page back; those that cannot be wiped end with their session. */
export const takePagesBack = async (): Promise<void> => {
  const back = given;
  given = [];
  for (const one of back) {
    if (!one.page.isClosed() && (await wipe(one.page))) waiting.push(one);
    else await one.page.context().close();
  }
};
