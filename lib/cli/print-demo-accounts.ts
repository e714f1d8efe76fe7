/** Prints the demo's accounts where the database holds them; nothing otherwise. Part of `npm run up`. */
import { DEMO_ACCOUNTS, DEMO_PASSWORD } from "@/lib/demo/demo-accounts";
import { hasDemoPeople } from "@/lib/workflows/demo/has-demo-people";

if (await hasDemoPeople()) {
  console.log(`· Demo accounts, all with the password ${DEMO_PASSWORD}:`);
  for (const { login, name, role } of DEMO_ACCOUNTS) {
    console.log(`    ${login.padEnd(12)} ${role.padEnd(11)} ${name}`);
  }
}
process.exit(0);
