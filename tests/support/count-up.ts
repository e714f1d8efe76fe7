/** A process that counts a person's epoch up so many times, for the tests of writers at once. */
import { closeDatabase, runInTransaction } from "@/lib/data/store/database";

const [id = "", times = "0"] = process.argv.slice(2);

async function main(): Promise<void> {
  for (let i = 0; i < Number(times); i += 1) {
    await runInTransaction(async (transaction) => {
      const user = await transaction.user.findUniqueOrThrow({ where: { id } });
      await transaction.user.update({ where: { id }, data: { sessionEpoch: user.sessionEpoch + 1 } });
    });
  }
  await closeDatabase();
}

main().catch((thrown: unknown) => {
  console.error(thrown);
  process.exit(1);
});
