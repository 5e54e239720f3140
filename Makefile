# make serve   builds the page and serves it at http://localhost:8080; HOST=0.0.0.0 lets a phone in the same network in
# make test    everything that must hold, as CI runs it
# make build   the page in dist/, ready for any static host
# make check   formatting and lints
# make fuzz    spoils whatever the page opens, SECONDS=600 long: nothing may stop it, change the book or take for ever
# make bench   sizes and times beside a bare Leptos counter, the speed of the core, and 200 deaths of the phone

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
MAKEFLAGS += --no-print-directory
.DEFAULT_GOAL := help

PORT ?= 8080
HOST ?= 127.0.0.1
# For `make fuzz`.
SECONDS ?= 60
SEED ?=
# Runs a command with the project's own tools first on PATH.
WITH := .ci/env
WASM := --target wasm32-unknown-unknown

.PHONY: help serve build fresh test check bench setup-build setup-test setup-bench lane-core lane-page \
  check-format check-core check-browser test-core test-browser test-journeys test-lighthouse figures fuzz icons bench-size \
  bench-speed bench-page test-kill

help:
	@sed -n 's/^# \(make .*\)/\1/p' Makefile

serve: build
	@exec $(WITH) node .ci/serve.mjs --root dist --port $(PORT) --host $(HOST)

setup-build:
	@.ci/setup build

setup-test:
	@.ci/setup test

setup-bench:
	@.ci/setup bench

build: setup-build
	@$(MAKE) dist/sw.js

# The last file that a build writes. Older than nothing it is made of: the next `make serve` is up at once.
dist/sw.js: $(shell find src style -type f) index.html Cargo.toml Cargo.lock Trunk.toml rust-toolchain.toml \
  .ci/env .ci/post-build.mjs .ci/sizes.mjs .ci/trim.mjs
	@$(WITH) trunk --log warn build
	@touch dist/sw.js

# What is tested in dist/ must be what stands in the sources. The journeys can be given another folder.
fresh:
	@[[ -n "$${PAGE_ROOT:-}" ]] || $(MAKE) --question dist/sw.js || \
	  { echo "dist/ is missing or older than what it is made of: run \"make build\" first" >&2; exit 2; }

check: setup-build check-format check-core check-browser

check-format:
	@echo "== formatting"; $(WITH) cargo fmt --check

check-core:
	@echo "== lints, core"; $(WITH) cargo clippy --quiet --locked --all-targets -- -D warnings

# The other test targets are of the core, and the core's tests do not compile for the browser.
check-browser:
	@echo "== lints, page"; $(WITH) cargo clippy --quiet --locked --lib --bins --test browser $(WASM) -- -D warnings

# Two lanes for two cores: the release build ends in one long single-threaded step, and it writes to
# other folders than the debug builds, so neither lane waits for the other.
test: setup-test
	@$(MAKE) --jobs=2 --output-sync=target lane-core lane-page
	@$(MAKE) test-journeys
	@$(MAKE) test-lighthouse
	@$(MAKE) figures
	@echo "== all checks passed"

lane-core:
	@$(MAKE) check-format
	@$(MAKE) check-core
	@$(MAKE) test-core
	@$(MAKE) check-browser
	@$(MAKE) test-browser

lane-page:
	@echo "== page, release build and size budget"; $(WITH) trunk --log warn build
	@touch dist/sw.js

test-core:
	@echo "== tests, core"; $(WITH) cargo test --quiet --locked

test-browser: setup-test
	@echo "== tests, in a headless browser"
	@$(WITH) cargo test --locked $(WASM) --test browser

test-journeys: setup-test fresh
	@echo "== journeys, the built page in real browsers"
	@cd tests/journeys && ../../$(WITH) npm test --silent

test-lighthouse: setup-test fresh
	@echo "== Lighthouse, the built page on a slow phone"
	@cd tests/lighthouse && ../../$(WITH) npm test --silent

figures: setup-test
	@echo "== figures, against a second implementation"
	@mkdir -p target/figures
	@$(WITH) cargo run --quiet --locked --example operation -- 2026-11-25 target/figures
	@$(WITH) bash -c '"$${BEETLE_PYTHON:-python3}" tests/figures/check.py'

# SEED=… does once more what a run with that seed did.
fuzz: setup-build
	@echo "== spoiled texts, $(SECONDS) s"; $(WITH) nice cargo run --quiet --locked --profile fuzz --example fuzz -- $(SECONDS) $(SEED)

icons:
	@.ci/icons

bench: bench-size bench-speed bench-page test-kill

bench-size: build
	@cd tests/bench/counter && CARGO_TARGET_DIR="$(CURDIR)/target" "$(CURDIR)/$(WITH)" trunk --log warn build --dist "$(CURDIR)/target/counter"
	@node .ci/sizes.mjs "bare counter=target/counter" "this page=dist"

bench-speed: setup-build
	@$(WITH) cargo bench --quiet --locked --bench recompute --bench stages

# The counter that bench-size builds is the measure here too.
bench-page: setup-bench bench-size
	@$(WITH) node tests/bench/page.mjs
	@cd tests/lighthouse && ../../$(WITH) npm test --silent -- --timed

# Takes minutes: a browser is started and killed for every save.
test-kill: setup-test fresh
	@echo "== kills, 50 ms after the page has said that an entry is saved"
	@$(WITH) node tests/kill/run.mjs
