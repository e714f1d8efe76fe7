"use client";

import { ActionIcon, Button, Checkbox, Group, Modal, TextInput } from "@mantine/core";
import { useDisclosure } from "@mantine/hooks";
import { ArrowLeft, ArrowRight } from "lucide-react";
import { useState } from "react";
import classes from "@/components/tray/photo-strip.module.css";
import { ConfirmButton } from "@/components/ui/confirm-button";
import type { StaffPhotoView } from "@/lib/plot/stone-photo";

export interface PhotoCardProps {
  photo: StaffPhotoView;
  label: string;
  mayEdit: boolean;
  isFirst: boolean;
  isLast: boolean;
  onMove: (by: -1 | 1) => Promise<boolean>;
  onUpdate: (part: { caption?: string; isShown?: boolean }) => Promise<boolean>;
  onRemove: () => Promise<boolean>;
}

type ToolsProps = Omit<PhotoCardProps, "label" | "mayEdit">;

function PhotoTools({ photo, isFirst, isLast, onMove, onUpdate, onRemove }: ToolsProps) {
  const [caption, setCaption] = useState(photo.caption);
  return (
    <div className={classes.tools}>
      <TextInput
        size="xs"
        aria-label="Caption"
        placeholder="Caption"
        maxLength={200}
        value={caption}
        onChange={(event) => setCaption(event.currentTarget.value)}
        onBlur={() => {
          if (caption.trim() !== photo.caption) onUpdate({ caption: caption.trim() });
        }}
      />
      <Checkbox
        size="sm"
        label="Shown to students"
        checked={photo.isShown}
        onChange={(event) => onUpdate({ isShown: event.currentTarget.checked })}
      />
      <Group gap={4}>
        <ActionIcon
          variant="subtle"
          size={32}
          aria-label="Move to the left"
          disabled={isFirst}
          onClick={() => onMove(-1)}
        >
          <ArrowLeft size={16} aria-hidden="true" />
        </ActionIcon>
        <ActionIcon
          variant="subtle"
          size={32}
          aria-label="Move to the right"
          disabled={isLast}
          onClick={() => onMove(1)}
        >
          <ArrowRight size={16} aria-hidden="true" />
        </ActionIcon>
        <ConfirmButton
          size="compact-sm"
          variant="subtle"
          danger
          question="Delete this photograph?"
          detail="It is gone for good, in both sizes."
          confirmLabel="Delete"
          onConfirm={onRemove}
        >
          Delete
        </ConfirmButton>
      </Group>
    </div>
  );
}

/** One photograph, small; pressed, large. */
export function PhotoCard(props: PhotoCardProps) {
  const { photo, label, mayEdit } = props;
  const [opened, dialog] = useDisclosure(false);
  const alt = photo.caption === "" ? `Photograph of ${label}` : photo.caption;
  return (
    <li className={classes.card}>
      <button type="button" className={classes.picture} onClick={dialog.open} aria-label={`Enlarge: ${alt}`}>
        {/* biome-ignore lint/performance/noImgElement: the framework's own image route would be a second door to the files. */}
        <img src={`/api/photos/${photo.photoId}/small`} alt={alt} loading="lazy" />
      </button>
      {mayEdit ? (
        <PhotoTools {...props} />
      ) : (
        <p className={classes.caption}>
          {photo.caption}
          {photo.isShown && <span className="muted"> Shown to students.</span>}
        </p>
      )}
      <Modal
        opened={opened}
        onClose={dialog.close}
        size="auto"
        title={alt}
        closeButtonProps={{ "aria-label": "Close" }}
      >
        {/* biome-ignore lint/performance/noImgElement: as above. */}
        <img src={`/api/photos/${photo.photoId}/large`} alt={alt} className={classes.large} />
        <Button
          component="a"
          href={`/api/photos/${photo.photoId}/large`}
          target="_blank"
          variant="subtle"
          mt="sm"
        >
          Open by itself
        </Button>
      </Modal>
    </li>
  );
}
