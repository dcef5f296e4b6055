import type { ReactNode } from "react";

/** One heading of the margin and what is said under it. */
export const MarginSection = ({ title, children }: { readonly title: string; readonly children: ReactNode }) => (
  <section className="margin-section">
    <h3 className="margin-title">{title}</h3>
    <div className="margin-text">{children}</div>
  </section>
);
