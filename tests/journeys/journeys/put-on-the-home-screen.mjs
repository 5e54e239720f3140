import { journey } from "../house/journey.mjs";
import { assert } from "../house/keeper.mjs";

journey("she puts the page on the home screen: its card names everything a phone asks for", {}, async (keeper) => {
  await keeper.open();
  const card = await keeper.driver.wait(async () => {
    const link = document.querySelector("link[rel=manifest]").href;
    const answer = await fetch(link);
    const manifest = await answer.json();
    const picture = (src) =>
      new Promise((done) => {
        const image = new Image();
        image.onload = () => done([image.naturalWidth, image.naturalHeight]);
        image.onerror = () => done(null);
        image.src = new URL(src, link).href;
      });
    const icons = [];
    for (const icon of manifest.icons) icons.push({ ...icon, drawn: await picture(icon.src) });
    return {
      manifest,
      icons,
      type: answer.headers.get("content-type"),
      start: new URL(manifest.start_url, link).href,
      scope: new URL(manifest.scope, link).href,
      apple: await picture(document.querySelector("link[rel=apple-touch-icon]").href),
      viewport: document.querySelector("meta[name=viewport]").content,
    };
  });
  const { manifest, icons } = card;
  for (const field of ["name", "short_name", "description", "lang", "id"]) {
    assert.ok(manifest[field]?.trim(), `the manifest says nothing under "${field}"`);
  }
  assert.ok(manifest.short_name.length <= 12, "a longer name is cut under the icon");
  assert.equal(manifest.display, "standalone");
  assert.match(manifest.theme_color, /^#[0-9a-f]{6}$/i);
  assert.match(manifest.background_color, /^#[0-9a-f]{6}$/i);
  assert.equal(card.start, keeper.host.address);
  assert.equal(card.scope, keeper.host.address);
  assert.equal(card.type, "application/manifest+json");
  for (const { src, sizes, drawn } of icons) assert.equal(drawn?.join("x"), sizes, `${src} is drawn at ${drawn}`);
  const has = (size, purpose) => icons.some((icon) => icon.sizes === size && (icon.purpose ?? "any").split(" ").includes(purpose));
  assert.ok(has("192x192", "any") && has("512x512", "any") && has("512x512", "maskable"));
  assert.deepEqual(card.apple, [180, 180]);
  assert.doesNotMatch(card.viewport, /user-scalable|maximum-scale/, "letters must stay enlargeable");
});
