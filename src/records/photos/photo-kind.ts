/** What a photo may be. */
export type PhotoKind = "image/jpeg" | "image/png" | "image/webp";

/** What the first bytes say. */
export type PhotoSigns =
  | { readonly kind: PhotoKind }
  /** A phone's own format, which browsers do not show. */
  | { readonly kind: "heic" }
  | { readonly kind: "no-photo" };

/** So many bytes tell what it is; fewer are no photo. */
export const tellingBytes = 16;

/** Brands of the HEIF family in a file-type box. Source: ISO/IEC 23008-12 and the registry of brands, from memory. */
const phoneBrands = new Set([
  "heic",
  "heix",
  "heim",
  "heis",
  "hevc",
  "hevx",
  "hevm",
  "hevs",
  "mif1",
  "msf1",
  "avif",
  "avis",
]);

const textAt = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to));

/** JPEG begins with the start of image and the start of another marker: an application's, a table's, a frame's or a comment's (ITU-T T.81, B.1.1.3, from memory). */
const isJpeg = (bytes: Uint8Array): boolean =>
  bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff && (bytes[3] ?? 0) >= 0xc0 && bytes[3] !== 0xff;

/** PNG begins with its signature and the header chunk (ISO/IEC 15948, 5.2 and 11.2.2, from memory). */
const isPng = (bytes: Uint8Array): boolean =>
  textAt(bytes, 0, 8) === "\u0089PNG\r\n\u001a\n" && textAt(bytes, 12, 16) === "IHDR";

/** WebP is a RIFF file with one of three first chunks (RFC 9649, from memory). */
const isWebp = (bytes: Uint8Array): boolean =>
  textAt(bytes, 0, 4) === "RIFF" && textAt(bytes, 8, 12) === "WEBP" && /^VP8[ LX]$/.test(textAt(bytes, 12, 16));

const isPhoneFormat = (bytes: Uint8Array): boolean =>
  textAt(bytes, 4, 8) === "ftyp" && phoneBrands.has(textAt(bytes, 8, 12));

/** Tells by its first bytes what a file is; its name and what its sender calls it do not count. */
export const tellPhoto = (bytes: Uint8Array): PhotoSigns => {
  if (bytes.length < tellingBytes) return { kind: "no-photo" };
  if (isJpeg(bytes)) return { kind: "image/jpeg" };
  if (isPng(bytes)) return { kind: "image/png" };
  if (isWebp(bytes)) return { kind: "image/webp" };
  return { kind: isPhoneFormat(bytes) ? "heic" : "no-photo" };
};
