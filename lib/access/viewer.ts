import type { Role } from "@/lib/plot/staff-view";

/** Who asks. Made on the server from a session that was checked; never from what a browser says of itself. */
export interface Viewer {
  readonly userId: string;
  readonly role: Role;
  readonly name: string;
}
