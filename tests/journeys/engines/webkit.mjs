import { walk } from "../house/walk.mjs";

await walk("webkit");
