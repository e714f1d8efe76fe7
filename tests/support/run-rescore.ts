/** A process that works one rescore out on the database that it is pointed at: to be killed in the middle. */
import { runRescore } from "@/lib/workflows/run-rescore";

const [rescoreId = ""] = process.argv.slice(2);
console.log("begun");
await runRescore(rescoreId);
console.log("done");
process.exit(0);
