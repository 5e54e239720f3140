// Files that the page hands to the keeper.

/** From here on, every file the page makes is noted with its name and text. Ends with the next load. */
export const watchFiles = (keeper) =>
  keeper.driver.run(() => {
    window.madeFiles = [];
    const texts = new Map();
    const make = URL.createObjectURL;
    URL.createObjectURL = function (blob) {
      const url = make.call(URL, blob);
      texts.set(url, blob);
      return url;
    };
    const click = HTMLAnchorElement.prototype.click;
    HTMLAnchorElement.prototype.click = function () {
      const blob = texts.get(this.href);
      const name = this.download;
      blob?.text().then((text) => window.madeFiles.push({ name, text, type: blob.type }));
      click.call(this);
    };
  });

/** The files noted, once there are `count` of them. */
export async function savedFiles(keeper, count) {
  await keeper.until(`${count} files were offered`, () => keeper.driver.run((count) => window.madeFiles.length >= count, count));
  return keeper.driver.run(() => window.madeFiles);
}
