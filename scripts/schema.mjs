/** Writes sites/site.schema.json from the built schema: run after `npm run build`. */

import { writeFileSync } from "node:fs";
import { siteJsonSchema } from "../dist/site/siteSchema.js";

const target = new URL("../sites/site.schema.json", import.meta.url);
writeFileSync(target, `${JSON.stringify(siteJsonSchema(), null, 2)}\n`);
