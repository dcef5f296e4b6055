import { colours } from "#drawing";

export type Theme = "light" | "dark";

const KEY = "underbench.theme";
const SYSTEM_DARK = "(prefers-color-scheme: dark)";

const remembered = (): Theme | null => {
  const value = localStorage.getItem(KEY);
  return value === "light" || value === "dark" ? value : null;
};

/** The theme in force: the one chosen here before, else the one the system asks for. */
export const currentTheme = (): Theme => remembered() ?? (matchMedia(SYSTEM_DARK).matches ? "dark" : "light");

/** Gives the page the colours of the drawing's tokens as custom properties. */
const show = (theme: Theme | "print"): void => {
  const { style } = document.documentElement;
  style.setProperty("color-scheme", theme === "dark" ? "dark" : "light");
  for (const [name, value] of Object.entries(colours[theme])) style.setProperty(`--${name}`, value);
};

/** Shows a theme and remembers it on this machine. */
export const chooseTheme = (theme: Theme): void => {
  localStorage.setItem(KEY, theme);
  show(theme);
};

/** Shows the theme in force and follows the system until a person has chosen; paper is white. */
export const startTheme = (): void => {
  show(currentTheme());
  matchMedia(SYSTEM_DARK).addEventListener("change", () => show(currentTheme()));
  window.addEventListener("beforeprint", () => show("print"));
  window.addEventListener("afterprint", () => show(currentTheme()));
};
