/**
 * Who may do what: one table, action by role. Every read, action and route asks it, through `can`, `requireAccess`
 * or `getScope`.
 */
import type { Role } from "@/lib/plot/staff-view";

/**
 * `never`; `any`: whatever it is; `own`: one's own (tray, sitting, account); `enrolled`: of a section that the
 * viewer is enrolled in; `taught`: of a section that the viewer teaches; `released`: one's own, once its debrief is
 * released.
 */
export type Rule = "never" | "any" | "own" | "enrolled" | "taught" | "released";

/** Rules that every row answers for a role; three columns, in the order student, instructor, director. */
const rules = (student: Rule, instructor: Rule, director: Rule): Readonly<Record<Role, Rule>> => ({
  student,
  instructor,
  director,
});

export const ACCESS_TABLE = {
  // A student's own work.
  "list-my-exercises": rules("enrolled", "never", "never"),
  "open-sitting": rules("enrolled", "never", "never"),
  "read-bench": rules("own", "never", "never"),
  "write-bench": rules("own", "never", "never"),
  "read-debrief": rules("released", "taught", "any"),
  // Of a student: their own, or of a section's student to whoever teaches it. Only released debriefs enter it.
  "read-progress": rules("own", "taught", "any"),
  "read-worksheet": rules("enrolled", "taught", "any"),
  "send-stone-check": rules("enrolled", "never", "never"),
  // Stones and what is known of them.
  "read-trays": rules("never", "any", "any"),
  "make-tray": rules("never", "any", "any"),
  "edit-tray": rules("never", "own", "any"),
  // A student's only where the photograph is marked as shown: nobody is enrolled for the others.
  "read-photo": rules("enrolled", "any", "any"),
  "hand-out-stone": rules("never", "any", "any"),
  "check-stone": rules("never", "any", "any"),
  // A second reading: anybody of the staff may begin one (save whoever wrote the reference), its reader alone writes it.
  "second-read": rules("never", "any", "any"),
  "write-reading": rules("never", "own", "own"),
  // Sections and what is set for them.
  "read-sections": rules("never", "taught", "any"),
  "make-section": rules("never", "never", "any"),
  "enrol-student": rules("never", "taught", "any"),
  "set-exercise": rules("never", "taught", "any"),
  "preview-exercise": rules("never", "taught", "any"),
  "grant-allowance": rules("never", "taught", "any"),
  "review-exercise": rules("never", "taught", "any"),
  "watch-benches": rules("never", "taught", "any"),
  "send-note": rules("never", "taught", "any"),
  "rescore-exercise": rules("never", "taught", "any"),
  "release-debrief": rules("never", "taught", "any"),
  // Overrules and comments; a comment is changed or deleted by whoever wrote it alone.
  "review-sitting": rules("never", "taught", "any"),
  "change-comment": rules("never", "own", "own"),
  "read-overview": rules("never", "any", "any"),
  "read-program": rules("never", "never", "any"),
  // What holds for the whole program. Whoever sets exercises reads the rubric that a new one starts with.
  "change-settings": rules("never", "never", "any"),
  // Accounts and the trail.
  "manage-people": rules("never", "never", "any"),
  // One's own: everybody. A link: for students of a section that the instructor teaches (lib/data/store/find-person.ts).
  "send-link": rules("never", "taught", "any"),
  "read-own-data": rules("own", "own", "any"),
  "erase-person": rules("never", "never", "any"),
  "read-trail": rules("never", "never", "any"),
  "change-own-password": rules("own", "own", "own"),
} as const satisfies Record<string, Readonly<Record<Role, Rule>>>;

export type Action = keyof typeof ACCESS_TABLE;
