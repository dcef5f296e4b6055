import { useId, useState } from "react";
import { largestPhotoBytes } from "#casework";
import type { Finding } from "#contract";
import { askServer } from "../../server/ask-server.ts";
import { AskedAgain } from "../fields/asked-again.tsx";

const MB = 1024 * 1024;

type Sending =
  | { readonly kind: "none" }
  | { readonly kind: "busy"; readonly name: string }
  | { readonly kind: "refused"; readonly name: string; readonly findings: readonly Finding[] }
  /** The store did not answer: the file is still held here. */
  | { readonly kind: "silent"; readonly file: File };

const tooLarge = (file: File): Finding => ({
  code: "photo-too-large",
  path: "",
  got: `${Math.ceil(file.size / MB)} MB`,
  needed: `at most ${largestPhotoBytes / MB} MB`,
  hint: "Nothing was sent. Take the photo smaller, or cut it.",
});

const sendPhoto = (file: File) =>
  askServer(
    "/api/photos",
    { method: "POST", body: file, headers: { "content-type": "application/octet-stream" } },
    async (response) => {
      const { hash } = (await response.json()) as { readonly hash: string };
      return hash;
    },
  );

interface PhotoEntryProps {
  /** Hashes of the photos on record here. */
  readonly photos: readonly string[];
  readonly onKept: (hash: string) => void;
}

/** Photos of a place: those on record, and one more. */
export const PhotoEntry = ({ photos, onKept }: PhotoEntryProps) => {
  const id = useId();
  const [sending, setSending] = useState<Sending>({ kind: "none" });
  const send = async (file: File) => {
    // Refused here, before a byte is sent.
    if (file.size > largestPhotoBytes) {
      setSending({ kind: "refused", name: file.name, findings: [tooLarge(file)] });
      return;
    }
    setSending({ kind: "busy", name: file.name });
    const answer = await sendPhoto(file);
    if (answer.kind === "answer") {
      setSending({ kind: "none" });
      onKept(answer.body);
    } else if (answer.kind === "silent") setSending({ kind: "silent", file });
    else setSending({ kind: "refused", name: file.name, findings: answer.findings });
  };
  return (
    <div className="photo-entry">
      {photos.map((hash, index) => (
        <a key={hash} href={`/api/photos/${hash}`} target="_blank" rel="noreferrer">
          <img src={`/api/photos/${hash}`} alt={`${index + 1} of this place`} className="photo" />
        </a>
      ))}
      <label htmlFor={id} className="photo-add">
        {photos.length === 0 ? "Add a photo" : "Another photo"}
        <input
          id={id}
          type="file"
          accept="image/jpeg,image/png,image/webp,image/heic,image/heif"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = "";
            if (file !== undefined) void send(file);
          }}
        />
      </label>
      <div role="status">
        {sending.kind === "busy" ? <p className="note">Keeping {sending.name}.</p> : null}
        {sending.kind === "silent" ? (
          <p className="margin-notice">
            The store did not answer, {sending.file.name} is not kept yet. It is still held by this page.{" "}
            <button type="button" className="link" onClick={() => void send(sending.file)}>
              Send it again
            </button>
          </p>
        ) : null}
      </div>
      {sending.kind === "refused" ? (
        <AskedAgain where={sending.name} findings={sending.findings} isPhoto>
          <button type="button" className="link" onClick={() => setSending({ kind: "none" })}>
            Leave it
          </button>
        </AskedAgain>
      ) : null}
    </div>
  );
};
