/** The hatchings every scene on the page refers to; rendered once per sheet. */
export const Patterns = () => (
  <svg className="patterns" width="0" height="0" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="hatch-unseen" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V6" stroke="var(--ink3)" strokeWidth="1.1" />
      </pattern>
      <pattern id="hatch-cut" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0V4" stroke="var(--ink)" strokeWidth="1" />
      </pattern>
      <pattern id="hatch-cut-accent" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path d="M0 0V4" stroke="var(--accent)" strokeWidth="1" />
      </pattern>
      <pattern id="dots-rubber" width="5" height="5" patternUnits="userSpaceOnUse">
        <circle cx="1.5" cy="1.5" r="0.8" fill="var(--ink3)" />
        <circle cx="4" cy="4" r="0.8" fill="var(--ink3)" />
      </pattern>
      <pattern id="dashes-fluid" width="10" height="6" patternUnits="userSpaceOnUse">
        <rect width="10" height="6" fill="var(--wash)" />
        <path d="M1 1.5h4M6 4.5h3" stroke="var(--ink3)" strokeWidth="0.9" />
      </pattern>
    </defs>
  </svg>
);
