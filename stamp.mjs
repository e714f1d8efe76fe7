import { hashOf } from "./lib/cli/set-up.mjs"; import { writeFileSync } from "node:fs";
writeFileSync(".next/loupework-stamp", hashOf(["package-lock.json","next.config.js","instrumentation.ts","proxy.ts","app","components","lib","prisma"]));
