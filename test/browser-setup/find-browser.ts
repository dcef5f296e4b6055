import { execFileSync } from "node:child_process";
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { fileURLToPath } from "node:url";
import { createBrotliDecompress } from "node:zlib";

/** A browser that can be started: its program and the environment it needs. */
export interface BrowserFiles {
  readonly executablePath: string;
  readonly env: Readonly<Record<string, string>>;
}

const repository = fileURLToPath(new URL("../../", import.meta.url));
const debianChromium = "/usr/bin/chromium";

const say = (line: string): void => {
  process.stderr.write(`${line}\n`);
};

/** Folder of the packed browser that the development dependency brings, or null off Linux x64. */
const packedBrowser = (): { readonly folder: string; readonly version: string } | null => {
  if (process.platform !== "linux" || process.arch !== "x64") return null;
  const entry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
  const root = entry.slice(
    0,
    entry.lastIndexOf(`${join("@sparticuz", "chromium")}`) + join("@sparticuz", "chromium").length,
  );
  const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { version: string };
  return { folder: join(root, "bin"), version };
};

const unbrotli = (from: string, to: string): Promise<void> =>
  pipeline(createReadStream(from), createBrotliDecompress(), createWriteStream(to, { mode: 0o755 }));

const untar = async (archive: string, into: string): Promise<void> => {
  mkdirSync(into, { recursive: true });
  const tar = `${into}.tar`;
  await unbrotli(archive, tar);
  execFileSync("tar", ["-xf", tar, "-C", into, "--no-same-owner"]);
  rmSync(tar);
};

/** The shipped font configuration names a fixed folder; this one names the folder the fonts were unpacked into. */
const fontConfiguration = (fonts: string, cache: string): string =>
  `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>${fonts}</dir><cachedir>${cache}</cachedir></fontconfig>`;

/** Unpacks the browser once per version into .cache and returns how it is started. */
const unpackBrowser = async (packed: { readonly folder: string; readonly version: string }): Promise<BrowserFiles> => {
  const home = join(repository, ".cache", `browser-${packed.version}`);
  if (!existsSync(home)) {
    say(`installing the test browser: unpacking Chromium ${packed.version} from its package`);
    const half = `${home}.${process.pid}.part`;
    rmSync(half, { recursive: true, force: true });
    mkdirSync(half, { recursive: true });
    await unbrotli(join(packed.folder, "chromium.br"), join(half, "chromium"));
    await untar(join(packed.folder, "swiftshader.tar.br"), join(half, "graphics"));
    execFileSync("sh", ["-c", 'mv "$0"/graphics/* "$0"/', half]);
    await untar(join(packed.folder, "al2023.tar.br"), join(half, "libraries"));
    await untar(join(packed.folder, "fonts.tar.br"), join(half, "fonts"));
    writeFileSync(join(half, "fonts.conf"), fontConfiguration(join(home, "fonts"), join(home, "font-cache")));
    renameSync(half, home);
  }
  return {
    executablePath: join(home, "chromium"),
    env: { LD_LIBRARY_PATH: join(home, "libraries", "lib"), FONTCONFIG_PATH: home },
  };
};

/** Debian's Chromium, installed when this user may install packages; null where it cannot be had. */
const debianBrowser = (): BrowserFiles | null => {
  if (!existsSync(debianChromium) && process.getuid?.() === 0 && existsSync("/usr/bin/apt-get")) {
    say("installing the test browser: apt-get install chromium");
    execFileSync("apt-get", ["update"], { stdio: "ignore" });
    execFileSync("apt-get", ["install", "-y", "chromium"], {
      stdio: "ignore",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  }
  return existsSync(debianChromium) ? { executablePath: debianChromium, env: {} } : null;
};

/** True when the program prints its version, so that every shared library it needs is there. */
const starts = (browser: BrowserFiles): boolean => {
  try {
    execFileSync(browser.executablePath, ["--version"], {
      env: { ...process.env, ...browser.env },
      cwd: dirname(browser.executablePath),
      stdio: "ignore",
    });
    return true;
  } catch {
    return false;
  }
};

/**
 * The browser the tests run in: the packed Chromium where it fits, else Debian's.
 * Throws where neither can be had: browser tests fail then, they are never left out.
 */
export const findBrowser = async (): Promise<BrowserFiles> => {
  const packed = packedBrowser();
  if (packed) {
    const unpacked = await unpackBrowser(packed);
    if (starts(unpacked)) return unpacked;
  }
  const debian = debianBrowser();
  if (debian && starts(debian)) return debian;
  throw new Error(
    "No test browser: the packed Chromium does not run here and apt-get gave none. Install Chromium as /usr/bin/chromium.",
  );
};
