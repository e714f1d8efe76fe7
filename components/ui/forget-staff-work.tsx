"use client";

import { useEffect } from "react";
import { forgetAllDrafts } from "@/components/staff/kept-draft-store";

/** Stands on a student's pages: unsaved work of staff, which may hold a reference, does not outlive their turn. */
export function ForgetStaffWork() {
  useEffect(forgetAllDrafts, []);
  return null;
}
