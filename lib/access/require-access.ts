import type { Action } from "@/lib/access/access-table";
import { can, getScope, type Resource } from "@/lib/access/can";
import type { Viewer } from "@/lib/access/viewer";
import { AppError } from "@/lib/base/app-error";

/** The one refusal for what is not there and for what is not this viewer's: the two read the same. */
export function refuseAsNotFound(): AppError {
  return new AppError("not-found", "There is no such thing here, or it is not for you to see.");
}

/**
 * Refuses an action that the viewer's role may never take: `not-allowed` to staff; to a student `not-found`, as if
 * there were no such thing. Ask this before anything is looked up.
 */
export function requireRole(viewer: Viewer, action: Action): void {
  if (getScope(viewer, action) !== "never") return;
  if (viewer.role === "student") throw refuseAsNotFound();
  throw new AppError("not-allowed", "Your role in the program does not include this.");
}

/**
 * Refuses unless the viewer may do this to that; `null` is a thing that was not found. Gives the facts back, so that
 * what was asked about and what is used are the same. Throws AppError `not-allowed` or `not-found`.
 */
export function requireAccess<R extends Resource>(viewer: Viewer, action: Action, resource: R | null): R {
  requireRole(viewer, action);
  if (resource === null || !can(viewer, action, resource)) throw refuseAsNotFound();
  return resource;
}
