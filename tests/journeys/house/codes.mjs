// Camera codes: what a decoder that knows nothing of the page reads off its screen, and texts that a stranger made.
import { crc32, deflateRawSync } from "node:zlib";
import jsqr from "jsqr";

const decode = jsqr.default ?? jsqr;
const LETTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

/** The text of the code on the screen, from its pixels as the browser drew them. */
export async function codeOnScreen(keeper) {
  const code = await keeper.one("code");
  // As somebody who holds it up to a camera: all of it, above the bar.
  await keeper.bringInSight(code);
  const png = (await keeper.driver.screenshot()).toString("base64");
  // The browser unpacks its own picture: one byte a pixel is all that a decoder looks at.
  const { width, height, grey } = await keeper.driver.wait(async (png, code) => {
    const picture = new Image();
    picture.src = `data:image/png;base64,${png}`;
    await picture.decode();
    // Pictures of one element alone are cut at the wrong place by some drivers.
    const scale = picture.width / innerWidth;
    const { left, top, width } = code.getBoundingClientRect();
    const canvas = document.createElement("canvas");
    canvas.width = canvas.height = Math.round(width * scale);
    const context = canvas.getContext("2d");
    context.drawImage(picture, -Math.round(left * scale), -Math.round(top * scale));
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    let grey = "";
    for (let at = 0; at < data.length; at += 4) grey += String.fromCharCode(data[at]);
    return { width: canvas.width, height: canvas.height, grey: btoa(grey) };
  }, png, code);
  const pixels = Uint8ClampedArray.from(Buffer.from(grey, "base64"), (value) => value);
  const rgba = new Uint8ClampedArray(4 * pixels.length).fill(255);
  pixels.forEach((value, at) => rgba.fill(value, 4 * at, 4 * at + 3));
  const found = decode(rgba, width, height);
  if (!found) throw new Error(`no code is read in a picture of ${width} by ${height} pixels`);
  return found.data;
}

/** Every code of the run on the screen, by its number, each turned to by its key. */
export async function codesOnScreen(keeper) {
  const [, , all] = await keeper.until("the codes are there", async () => /Code (\d+) of (\d+)/.exec(await keeper.text("code-place")));
  const texts = [];
  for (let tries = 0; texts.length < Number(all); tries += 1) {
    if (tries > Number(all)) throw new Error("the codes do not come round");
    // The first press ends the turning; from then on the screen stands still.
    if (Number(all) > 1) await keeper.tap("code-next");
    const text = await codeOnScreen(keeper);
    if (!texts.includes(text)) texts.push(text);
  }
  // Their numbers stand after name and kind.
  return texts.sort((one, other) => one.slice(4, 6) - other.slice(4, 6));
}

/** The texts of a run that holds `text`, made by the rules that stand in the page's source and not by its program. */
export function codesOf(text, each = 600) {
  const bytes = deflateRawSync(Buffer.from(text));
  const sum = (bytes) => crc32(bytes).toString(16).toUpperCase().padStart(8, "0");
  const all = Math.ceil(bytes.length / each);
  return Array.from({ length: all }, (_, at) => {
    const two = (number) => `${number}`.padStart(2, "0");
    const head = `BH1Z${two(at + 1)}${two(all)}${sum(bytes)}`;
    const inside = head + base45(bytes.subarray(at * each, (at + 1) * each));
    return inside + sum(Buffer.from(inside));
  });
}

/** RFC 9285. */
function base45(bytes) {
  let text = "";
  for (let at = 0; at < bytes.length; at += 2) {
    const two = at + 1 < bytes.length;
    let value = two ? bytes[at] * 256 + bytes[at + 1] : bytes[at];
    for (let letter = 0; letter < (two ? 3 : 2); letter += 1, value = Math.floor(value / 45)) text += LETTERS[value % 45];
  }
  return text;
}
