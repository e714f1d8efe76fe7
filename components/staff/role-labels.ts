import type { Role } from "@/lib/plot/staff-view";

/** The roles as they are read. */
export const ROLE_LABELS: Readonly<Record<Role, string>> = {
  student: "Student",
  instructor: "Instructor",
  director: "Director",
};
