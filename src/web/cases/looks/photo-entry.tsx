import { useEffect, useId, useState } from "react";
import { largestPhotoBytes } from "#casework";
import type { Finding } from "#contract";
import { AskedAgain } from "../fields/asked-again.tsx";
import { photoKey } from "../unsent/entry.ts";
import { hashPhoto, keepPhoto, loadPhoto } from "../unsent/photo-shelf.ts";
import { STORE_TROUBLE, sendPhotoBytes } from "../unsent/send-entries.ts";
import { outbox, useOutbox } from "../unsent/workshop-outbox.ts";

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

/** One photo of a place that waits in this browser; nothing of it is at the store yet. */
const WaitingPhoto = ({ hash, name }: { readonly hash: string; readonly name: string }) => {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let gone = false;
    void loadPhoto(hash).then((photo) => {
      if (photo === null || gone) return;
      made = URL.createObjectURL(photo);
      setAddress(made);
    });
    return () => {
      gone = true;
      if (made !== null) URL.revokeObjectURL(made);
    };
  }, [hash]);
  return (
    <figure className="photo-waiting">
      {address === null ? null : <img src={address} alt={name} className="photo" />}
      <figcaption className="note">{name}: kept in this browser, not yet at the store</figcaption>
    </figure>
  );
};

/** One photo on record; where its bytes have not come to the store, it says so. */
const StoredPhoto = ({ hash, number }: { readonly hash: string; readonly number: number }) => {
  const [missing, setMissing] = useState(false);
  if (missing) return <p className="note">Photo {number} is not at the store.</p>;
  return (
    <a href={`/api/photos/${hash}`} target="_blank" rel="noreferrer">
      <img
        src={`/api/photos/${hash}`}
        alt={`${number} of this place`}
        className="photo"
        onError={() => setMissing(true)}
      />
    </a>
  );
};

interface PhotoEntryProps {
  /** Hashes of the photos on record here. */
  readonly photos: readonly string[];
  readonly onKept: (hash: string) => void;
}

/** Photos of a place: those on record, and one more. */
export const PhotoEntry = ({ photos, onKept }: PhotoEntryProps) => {
  const id = useId();
  const { entries } = useOutbox();
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
      {photos.map((hash, index) => {
        const waits = entries.get(photoKey(hash));
        return waits?.what === "photo" ? (
          <WaitingPhoto key={hash} hash={hash} name={waits.name} />
        ) : (
          <StoredPhoto key={hash} hash={hash} number={index + 1} />
        );
      })}
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
