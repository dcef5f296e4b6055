/** Bytes that begin as a PNG does; n tells one from another. Not a picture anybody could look at. */
export const pngOf = (n: number, length = 200): Uint8Array => {
  const bytes = new Uint8Array(length);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  new DataView(bytes.buffer).setUint32(16, n);
  return bytes;
};

const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

/** Beginnings of files, by what they are. */
export const beginnings: Readonly<Record<string, readonly number[]>> = {
  "a JPEG of a camera": [0xff, 0xd8, 0xff, 0xe1, 0x12, 0x34, ...ascii("Exif"), 0, 0, 0x4d, 0x4d, 0, 0x2a],
  "a JPEG of a program": [0xff, 0xd8, 0xff, 0xe0, 0, 16, ...ascii("JFIF"), 0, 1, 1, 0, 0, 1],
  "a JPEG without a name": [0xff, 0xd8, 0xff, 0xdb, 0, 67, 0, 8, 6, 6, 7, 6, 5, 8, 7, 7],
  "a PNG": [...pngOf(0, 20)],
  "a lossy WebP": [...ascii("RIFF"), 1, 2, 3, 4, ...ascii("WEBPVP8 ")],
  "a lossless WebP": [...ascii("RIFF"), 1, 2, 3, 4, ...ascii("WEBPVP8L")],
  "an extended WebP": [...ascii("RIFF"), 1, 2, 3, 4, ...ascii("WEBPVP8X")],
  "a phone's HEIC": [0, 0, 0, 0x24, ...ascii("ftypheic"), 0, 0, 0, 0],
  "a phone's HEIC of another brand": [0, 0, 0, 0x24, ...ascii("ftypmif1"), 0, 0, 0, 0],
  "a film": [0, 0, 0, 0x20, ...ascii("ftypisom"), 0, 0, 2, 0],
  "a GIF": ascii("GIF89a0000000000"),
  "a PDF": ascii("%PDF-1.7 and the rest"),
  "a page": ascii("<!doctype html><img onerror=alert(1)>"),
  "a drawing with script": ascii("<svg xmlns='http://www.w3.org/2000/svg'>"),
  "a sound (RIFF too)": [...ascii("RIFF"), 1, 2, 3, 4, ...ascii("WAVEfmt ")],
  "half a JPEG marker": [
    0xff, 0xd8, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff,
  ],
  "a PNG that lost its first byte in mail": [
    0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52, 0,
  ],
};
