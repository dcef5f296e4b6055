/// <reference types="vite/client" />

/** The text of docs/sources.md, put in by the build. */
declare const SOURCES_TEXT: string;
