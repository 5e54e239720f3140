import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";
import { keepYard } from "../house/round.mjs";

// Each is what it is by its first bytes; the names say something else, as names on phones do.
const FILES = [
  ["photo.json", Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x10, 0x4a, 0x46, 0x49, 0x46, 0x00, 0x01]), /picture|photo/i],
  ["yard-list.txt", Buffer.from("hive;date;beetles\r\n1;2026-07-01;4\r\n2;2026-07-01;0\r\n"), /table/i],
  ["letter.json", Buffer.from("%PDF-1.7\n%\u00e2\u00e3\n1 0 obj\n"), /PDF|document/i],
  ["other.json", Buffer.from('{"songs":["one","two"]}'), /another program|other program|not a backup/i],
  ["nothing.json", Buffer.alloc(0), /empty|nothing in it/i],
];

journey("she picked the wrong file: the page names what it is and changes nothing", {}, async (keeper) => {
  await keeper.open();
  await keepYard(keeper, 2);
  const pages = await keeper.pages();
  await keeper.place("book");
  for (const [name, bytes, words] of FILES) {
    const path = join(keeper.engine.home, name);
    writeFileSync(path, bytes);
    await keeper.pick("book-restore", path);
    await keeper.reads("main", words);
    assert.equal(await keeper.shows("restore-confirm"), false, `${name} must not be on offer`);
    assert.deepEqual(await keeper.pages(), pages);
  }
});
