"use client";

import { useState } from "react";
import { useReviewDesk } from "@/components/review/review-desk-context";

/** Text of a field that outlasts its form: it is there again when one comes back to the same plot. */
export function useDraft(field: string, initial = ""): readonly [string, (text: string) => void] {
  const { drafts, view } = useReviewDesk();
  const key = `${view.debrief.sittingId} ${field}`;
  const [text, setText] = useState(drafts.get(key) ?? initial);
  const set = (next: string) => {
    setText(next);
    if (next === "" || next === initial) drafts.delete(key);
    else drafts.set(key, next);
  };
  return [text, set];
}
