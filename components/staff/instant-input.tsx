"use client";

import { TextInput } from "@mantine/core";
import { useSyncExternalStore } from "react";
import { fromZoneText, toZoneText } from "@/components/staff/zone-text";

const subscribeToNothing = () => () => {};

export interface InstantInputProps {
  label: string;
  description?: string;
  /** ISO instant, or an empty text. */
  value: string;
  onChange: (iso: string) => void;
  required?: boolean;
  error?: string | null;
}

/**
 * A date and time in the browser's zone, kept as an instant. The server cannot know the zone, so its HTML leaves
 * the field empty and the browser fills it; both first draw the same, so there is no mismatch.
 */
export function InstantInput({ label, description, value, onChange, required, error }: InstantInputProps) {
  const isBrowser = useSyncExternalStore(
    subscribeToNothing,
    () => true,
    () => false,
  );
  return (
    <TextInput
      type="datetime-local"
      label={label}
      description={description}
      required={required === true}
      error={error ?? undefined}
      value={isBrowser ? toZoneText(value) : ""}
      onChange={(event) => onChange(fromZoneText(event.currentTarget.value))}
    />
  );
}
