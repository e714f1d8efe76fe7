import { getDatabase } from "@/lib/data/store/database";
import { DEMO_ACCOUNTS } from "@/lib/demo/demo-accounts";

/** Whether the database holds the demo school: its director under the demo's sign-in name and invented name. */
export async function hasDemoPeople(): Promise<boolean> {
  const director = DEMO_ACCOUNTS.find(({ role }) => role === "director");
  if (director === undefined) return false;
  const { login, name } = director;
  return (await getDatabase().user.findFirst({ where: { login, name }, select: { id: true } })) !== null;
}
