import { ACCESS_TABLE, type Action, type Rule } from "@/lib/access/access-table";
import type { Viewer } from "@/lib/access/viewer";

/** What a rule may ask of a thing. What is left out is not so: no owner, nobody enrolled, not released. */
export interface Resource {
  /** Who made or owns it: a tray's owner, a sitting's student, an account's person. */
  readonly ownerId?: string;
  /** Who teaches the section that it belongs to. */
  readonly instructorIds?: readonly string[];
  /** Who is enrolled in the section that it belongs to. */
  readonly studentIds?: readonly string[];
  /** Whether its debrief is released now. */
  readonly released?: boolean;
}

/** The rule for a viewer's role: what a list is narrowed by. */
export function getScope(viewer: Viewer, action: Action): Rule {
  return ACCESS_TABLE[action][viewer.role];
}

/** Whether the viewer may do this to that. Pure; the facts of the resource are the caller's to load. */
export function can(viewer: Viewer, action: Action, resource: Resource = {}): boolean {
  switch (getScope(viewer, action)) {
    case "never":
      return false;
    case "any":
      return true;
    case "own":
      return resource.ownerId === viewer.userId;
    case "enrolled":
      return resource.studentIds?.includes(viewer.userId) ?? false;
    case "taught":
      return resource.instructorIds?.includes(viewer.userId) ?? false;
    case "released":
      return resource.ownerId === viewer.userId && resource.released === true;
  }
}
