/**
 * `npm run faults [kill|disk|network …]`: the large versions of the fault tests, on the built program itself. Each
 * prints what it tried and what became of it; the exit status is 1 when anything was lost.
 */
import { tryFullDisk } from "@/tests/faults/disk";
import { tryKills } from "@/tests/faults/kill";
import { tryNetworkCut } from "@/tests/faults/network";

const TRIALS = { kill: tryKills, disk: tryFullDisk, network: tryNetworkCut } as const;

async function main(): Promise<void> {
  const wanted = process.argv.slice(2);
  for (const [name, run] of Object.entries(TRIALS)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    console.log(`\n${name}`);
    const isClean = await run();
    console.log(isClean ? "nothing was lost" : "SOMETHING WAS LOST");
    if (!isClean) process.exitCode = 1;
  }
}

main().catch((thrown: unknown) => {
  console.error(thrown);
  process.exit(1);
});
