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

/** Who was there last term and has left: accounts that are switched off. */
export const PAST_ACCOUNTS: readonly DemoAccount[] = [
  { login: "past1", name: "Corin Ashdale", role: "student" },
  { login: "past2", name: "Mirela Foss", role: "student" },
  { login: "past3", name: "Jory Pellham", role: "student" },
  { login: "past4", name: "Anneke Stroud", role: "student" },
  { login: "past5", name: "Davit Lorne", role: "student" },
  { login: "past6", name: "Sable Winfrith", role: "student" },
  { login: "past7", name: "Rhona Tressel", role: "student" },
  { login: "past8", name: "Emeka Harrow", role: "student" },
  { login: "past9", name: "Lotte Brannick", role: "student" },
  { login: "past10", name: "Ivo Selwick", role: "student" },
  { login: "past11", name: "Perrin Oakes", role: "student" },
  { login: "past12", name: "Zadie Calloway", role: "student" },
];
