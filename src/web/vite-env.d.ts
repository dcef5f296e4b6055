/// <reference types="vite/client" />

/** The text of docs/sources.md, put in by the build. */
declare const SOURCES_TEXT: string;

/** docs/examples/layouts/rear-integral-link-rubber.json, put in when the pages are built. */
declare const EXAMPLE_LAYOUT_TEXT: string;
