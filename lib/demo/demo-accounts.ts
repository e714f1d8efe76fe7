/** The accounts of the demo school, the Quillmere School of Gemmology. All names are invented. */
import type { Role } from "@/lib/plot/staff-view";

export interface DemoAccount {
  readonly login: string;
  readonly name: string;
  readonly role: Role;
}

/** One password for all of them, printed at start-up: the demo is for a trial on one machine and holds nobody's work. */
export const DEMO_PASSWORD = "loupe-and-tweezers";

export const DEMO_ACCOUNTS: readonly DemoAccount[] = [
  { login: "director", name: "Thessaly Corrin", role: "director" },
  { login: "instructor", name: "Ione Marrable", role: "instructor" },
  { login: "instructor2", name: "Bram Oldacre", role: "instructor" },
  { login: "student1", name: "Wren Halloway", role: "student" },
  { login: "student2", name: "Tobin Askew", role: "student" },
  { login: "student3", name: "Marisol Quade", role: "student" },
  { login: "student4", name: "Idris Penhale", role: "student" },
  { login: "student5", name: "Linnea Brock", role: "student" },
  { login: "student6", name: "Oren Castell", role: "student" },
  { login: "student7", name: "Pia Thornbury", role: "student" },
  { login: "student8", name: "Yusra Amadine", role: "student" },
  { login: "student9", name: "Kit Ravensworth", role: "student" },
  { login: "student10", name: "Noor Delacey", role: "student" },
  { login: "student11", name: "Felix Umberly", role: "student" },
  { login: "student12", name: "Sanna Vikström", role: "student" },
];
