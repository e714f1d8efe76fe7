"use client";

import { Button, FileButton } from "@mantine/core";
import { ImagePlus } from "lucide-react";
import { useState } from "react";
import type { ActionResult } from "@/components/forms/action-result";
import { PhotoCard } from "@/components/tray/photo-card";
import classes from "@/components/tray/photo-strip.module.css";
import { uploadPhoto } from "@/components/tray/upload-photo";
import { ErrorNote } from "@/components/ui/error-note";
import { useRefresh } from "@/components/ui/use-refresh";
import { MOST_PHOTO_BYTES, type StaffPhotoView } from "@/lib/plot/stone-photo";

export interface PhotoActions {
  readonly update: (input: { photoId: string; caption: string; isShown: boolean }) => Promise<ActionResult>;
  readonly order: (stoneId: string, photoIds: readonly string[]) => Promise<ActionResult>;
  readonly remove: (photoId: string) => Promise<ActionResult>;
}

export interface PhotoStripProps extends PhotoActions {
  stoneId: string;
  label: string;
  photos: readonly StaffPhotoView[];
  mayEdit: boolean;
}

const NO_ANSWER = "The server did not answer, so nothing was changed. Try again.";

/** A stone's photographs: added, captioned, put in order, shown to students one by one, deleted. */
export function PhotoStrip({ stoneId, label, photos, mayEdit, update, order, remove }: PhotoStripProps) {
  const refresh = useRefresh();
  const [uploading, setUploading] = useState(0);
  const [failures, setFailures] = useState<readonly string[]>([]);
  const add = async (files: File[]) => {
    setFailures([]);
    setUploading(files.length);
    for (const file of files) {
      const failure = await uploadPhoto(stoneId, file);
      if (failure !== null) setFailures((before) => [...before, failure]);
      setUploading((before) => before - 1);
    }
    refresh();
  };
  const act = async (work: Promise<ActionResult>) => {
    const result = await work.catch(() => null);
    setFailures(result === null ? [NO_ANSWER] : result.ok ? [] : [result.message]);
    refresh();
    return result?.ok ?? false;
  };
  const move = (index: number, by: -1 | 1) => {
    const ids = photos.map(({ photoId }) => photoId);
    const [moved] = ids.splice(index, 1);
    if (moved !== undefined) ids.splice(index + by, 0, moved);
    return act(order(stoneId, ids));
  };
  return (
    <section className={`${classes.root} no-print`} aria-labelledby="photos-title">
      <div className={classes.head}>
        <h2 id="photos-title">Photographs</h2>
        {mayEdit && (
          <FileButton onChange={add} accept="image/jpeg,image/png,image/webp" multiple>
            {(props) => (
              <Button
                {...props}
                variant="outline"
                size="sm"
                loading={uploading > 0}
                leftSection={<ImagePlus size={16} aria-hidden="true" />}
              >
                Add photographs
              </Button>
            )}
          </FileButton>
        )}
      </div>
      {failures.map((message) => (
        <ErrorNote key={message} message={message} />
      ))}
      {photos.length === 0 ? (
        <p className="muted">
          {mayEdit
            ? `None yet. JPEG, PNG or WebP, up to ${MOST_PHOTO_BYTES / 1_000_000} MB each. Where and with what a picture was taken is removed. Students see none unless you show it.`
            : "None yet."}
        </p>
      ) : (
        <ul className={classes.strip}>
          {photos.map((photo, index) => (
            <PhotoCard
              key={photo.photoId}
              photo={photo}
              label={label}
              mayEdit={mayEdit}
              isFirst={index === 0}
              isLast={index === photos.length - 1}
              onMove={(by) => move(index, by)}
              onUpdate={(part) =>
                act(
                  update({ photoId: photo.photoId, caption: photo.caption, isShown: photo.isShown, ...part }),
                )
              }
              onRemove={() => act(remove(photo.photoId))}
            />
          ))}
        </ul>
      )}
    </section>
  );
}
