import { useId, useState } from "react";
import { largestPhotoBytes } from "#casework";
import type { Finding } from "#contract";
import { AskedAgain } from "../fields/asked-again.tsx";
import { hashPhoto, keepPhoto } from "../unsent/photo-shelf.ts";
import { STORE_TROUBLE, sendPhotoBytes } from "../unsent/send-entries.ts";
import { outbox } from "../unsent/workshop-outbox.ts";
import { PlacePhotos } from "./place-photos.tsx";

const MB = 1024 * 1024;

type Sending =
  | { readonly kind: "none" }
  | { readonly kind: "busy"; readonly name: string }
  | { readonly kind: "refused"; readonly name: string; readonly findings: readonly Finding[] }
  /** The store did not answer, and this browser cannot keep the file: only this place of the page holds it. */
  | { readonly kind: "silent"; readonly file: File };

const tooLarge = (file: File): Finding => ({
  code: "photo-too-large",
  path: "",
  got: `${Math.ceil(file.size / MB)} MB`,
  needed: `at most ${largestPhotoBytes / MB} MB`,
  hint: "Nothing was sent. Take the photo smaller, or cut it.",
});

/** Keeps a photo in this browser until the store answers; null where it cannot even be named. */
const keepUntilSent = async (file: File): Promise<string | null> => {
  const hash = await hashPhoto(file);
  if (hash === null) return null;
  outbox.putPhoto({ hash, name: file.name }, await keepPhoto(hash, file));
  return hash;
};

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
    const answer = await sendPhotoBytes(file);
    if (answer.kind === "answer") {
      setSending({ kind: "none" });
      onKept(answer.body);
      return;
    }
    if (answer.kind === "silent" || answer.status >= STORE_TROUBLE) {
      const hash = await keepUntilSent(file);
      if (hash === null) setSending({ kind: "silent", file });
      else {
        setSending({ kind: "none" });
        onKept(hash);
      }
    } else setSending({ kind: "refused", name: file.name, findings: answer.findings });
  };
  return (
    <div className="photo-entry">
      <PlacePhotos photos={photos} />
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
            The store did not answer, and this browser cannot keep {sending.file.name}: it is lost once you leave this
            place.{" "}
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
