/** `npm run generate`: installs what the lock file names and generates the database client. */
import { ensureGenerated, ensureInstalled, requireNode } from "./set-up.mjs";

requireNode();
ensureInstalled();
ensureGenerated();
