// The journey's side of the server process.
import { fork } from "node:child_process";
import { resolve } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";

const SERVER = fileURLToPath(new URL("server.mjs", import.meta.url));

/**
 * The ports that journeys of this run had. A system hands a port out again, to one run in five or so; a browser would
 * then still hold the worker and the book of the journey before, which answer instead of this host.
 */
const had = new Set();

/** A host of the page on a port of its own: to a browser that is another origin, with nothing kept yet. */
export class Host {
  /** @param {string} root the built folder */
  constructor(root) {
    // Below a path, as on most static hosts: an address that starts with a stroke would miss.
    this.base = "/yard/almanac/";
    this.settings = { root: resolve(root), faults: null };
    this.asked = [];
  }

  async start() {
    do {
      this.child?.kill("SIGKILL");
      await this.#listen();
    } while (had.has(this.port));
    had.add(this.port);
    this.origin = `http://127.0.0.1:${this.port}`;
    this.address = this.origin + this.base;
    await this.change({});
    return this;
  }

  async #listen() {
    this.child = fork(SERVER, [this.base], { env: process.env, execArgv: [] });
    this.ended = new Promise((done) => this.child.once("exit", done));
    this.child.on("message", ({ asked }) => asked && this.asked.push(asked));
    ({ port: this.port } = await this.#next((message) => message.port));
  }

  #next(wanted) {
    return new Promise((done, fail) => {
      const look = (message) => {
        if (!wanted(message)) return;
        this.child.off("message", look);
        done(message);
      };
      this.child.on("message", look);
      this.ended.then((code) => fail(new Error(`the server process ended (${code})`)));
    });
  }

  /** Serves another folder, or puts other faults before the page, from the next request on. */
  async change(changed) {
    Object.assign(this.settings, changed);
    const number = (this.number = (this.number ?? 0) + 1);
    const settled = this.#next((message) => message.settled === number);
    this.child.send({ settings: this.settings, number });
    await settled;
  }

  /** Ends the server process. From here on every request of the browser finds a closed door. */
  async stop() {
    this.stopped = true;
    this.child.kill("SIGKILL");
    await this.ended;
    const open = await fetch(this.address).then(() => true, () => false);
    if (open) throw new Error(`${this.address} still answers after its server process has ended`);
  }

  end() {
    this.child.kill("SIGKILL");
    return this.ended;
  }
}
