// A W3C WebDriver client. The ready-made ones fetch drivers by themselves or wrap every engine in its
// own options; the journeys need two dozen commands, the same in all three engines, and nothing fetched.

/** The key under which the standard hands out elements. */
const ELEMENT = "element-6066-11e4-a52e-4f735466cecf";

/** An error answer of a driver. `code` is the standard's word for it, such as "no such element". */
export class DriverError extends Error {
  constructor(code, message, command) {
    super(`${command}: ${code}: ${message}`);
    this.name = "DriverError";
    this.code = code;
  }
}

export class WebDriver {
  /** @param {string} address of the driver, such as http://127.0.0.1:4444 */
  constructor(address) {
    this.address = address;
    this.session = null;
    this.capabilities = null;
  }

  async send(method, path, body) {
    const command = `${method} ${path}`;
    const answer = await fetch(`${this.address}${path}`, {
      method,
      headers: { "Content-Type": "application/json; charset=utf-8" },
      // A driver that has stopped answering is an error of its own, not an endless wait.
      signal: AbortSignal.timeout(45_000),
      ...(method === "POST" && { body: JSON.stringify(body ?? {}) }),
    });
    const text = await answer.text();
    let value;
    try {
      ({ value } = JSON.parse(text));
    } catch {
      throw new DriverError("unknown error", `answered ${answer.status} with no JSON: ${text.slice(0, 200)}`, command);
    }
    if (!answer.ok) throw new DriverError(value?.error ?? "unknown error", value?.message ?? "", command);
    return value;
  }

  async start(capabilities) {
    const value = await this.send("POST", "/session", { capabilities: { alwaysMatch: capabilities } });
    this.session = value.sessionId;
    this.capabilities = value.capabilities;
  }
  async end() {
    if (this.session) await this.send("DELETE", `/session/${this.session}`);
    this.session = null;
  }
  call(method, path, body) {
    return this.send(method, `/session/${this.session}${path}`, body);
  }

  timeouts(values) { return this.call("POST", "/timeouts", values); }
  go(url) { return this.call("POST", "/url", { url }); }
  url() { return this.call("GET", "/url"); }
  back() { return this.call("POST", "/back"); }
  rect(rect) { return this.call("POST", "/window/rect", rect); }
  window() { return this.call("GET", "/window"); }
  windows() { return this.call("GET", "/window/handles"); }
  turnTo(handle) { return this.call("POST", "/window", { handle }); }
  close() { return this.call("DELETE", "/window"); }
  async newTab() { return (await this.call("POST", "/window/new", { type: "tab" })).handle; }
  async screenshot() { return Buffer.from(await this.call("GET", "/screenshot"), "base64"); }

  async findAll(css) {
    const found = await this.call("POST", "/elements", { using: "css selector", value: css });
    return found.map((element) => element[ELEMENT]);
  }
  click(id) { return this.call("POST", `/element/${id}/click`); }
  clear(id) { return this.call("POST", `/element/${id}/clear`); }
  keys(id, text) { return this.call("POST", `/element/${id}/value`, { text }); }

  /**
   * Runs a function in the page and returns what it returns. Its source is sent, so it sees only its
   * arguments; a driver's script is not held to the page's content security policy.
   */
  run(work, ...args) {
    const source = `return (${work}).apply(null, arguments)`;
    return this.call("POST", "/execute/sync", { script: source, args: args.map(sendable) });
  }
  /** As {@link run}, for a function that returns a promise. */
  async wait(work, ...args) {
    const source = `const done = arguments[arguments.length - 1];
      Promise.resolve().then(() => (${work}).apply(null, [].slice.call(arguments, 0, -1)))
        .then((value) => done({ value }), (error) => done({ error: String(error) }));`;
    const { value, error } = await this.call("POST", "/execute/async", { script: source, args: args.map(sendable) });
    if (error) throw new Error(`in the page: ${error}`);
    return value;
  }
}

/** An element as an argument of a script. */
export class Handle {
  constructor(id) {
    this.id = id;
  }
}
const sendable = (value) => (value instanceof Handle ? { [ELEMENT]: value.id } : (value ?? null));
