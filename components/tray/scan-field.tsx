"use client";

import { Button, TextInput } from "@mantine/core";
import { ScanLine } from "lucide-react";
import { type FormEvent, useRef, useState } from "react";
import classes from "@/components/tray/scan-field.module.css";

export interface ScanFieldProps {
  /** Told each scanned address or typed code; the field takes the next at once. */
  onScan: (text: string) => void;
  busy: boolean;
  label: string;
}

/** Takes what a hand scanner types: the label's address and Enter. The short code under the label can be typed as well. */
export function ScanField({ onScan, busy, label }: ScanFieldProps) {
  const [text, setText] = useState("");
  const field = useRef<HTMLInputElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (text.trim() === "") return;
    onScan(text.trim());
    setText("");
    field.current?.focus();
  };
  return (
    <form onSubmit={submit} className={classes.root}>
      <TextInput
        ref={field}
        className={classes.field}
        label={label}
        description="With a hand scanner, or type the code under the label, such as 7K3M-9QXA."
        leftSection={<ScanLine size={18} aria-hidden="true" />}
        size="md"
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        maxLength={300}
        data-autofocus
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <Button type="submit" size="md" variant="outline" loading={busy}>
        Enter
      </Button>
    </form>
  );
}
