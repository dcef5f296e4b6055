import { useState } from "react";
import { chooseTheme, currentTheme } from "../look/theme.ts";

/** Changes between the light and the dark sheet; remembered on this machine. */
export const ThemeSwitch = () => {
  const [theme, setTheme] = useState(currentTheme);
  const other = theme === "light" ? "dark" : "light";
  const change = () => {
    chooseTheme(other);
    setTheme(other);
  };
  return (
    <button type="button" className="head-button" onClick={change} aria-label={`Change to the ${other} sheet`}>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
        <circle cx="10" cy="10" r="7.5" fill="none" stroke="currentColor" strokeWidth="1.6" />
        <path d="M10 2.5a7.5 7.5 0 0 1 0 15z" fill="currentColor" />
      </svg>
    </button>
  );
};
