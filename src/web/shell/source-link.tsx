import { Link } from "@tanstack/react-router";

/** A source key that opens its entry on the Reference sheet. */
export const SourceLink = ({ source }: { readonly source: string }) => (
  <Link to="/reference" search={{ source }} className="source-link">
    {source}
  </Link>
);
