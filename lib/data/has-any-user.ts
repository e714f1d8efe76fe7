import { getDatabase } from "@/lib/data/store/database";

/** Whether anybody has an account yet: on the first start nobody has, and the first director is asked for. */
export async function hasAnyUser(): Promise<boolean> {
  return (await getDatabase().user.findFirst({ select: { id: true } })) !== null;
}
