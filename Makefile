# Needs make and Python 3.11 or newer; everything else goes into .venv.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
PIP := $(BIN)/python -m pip --disable-pip-version-check --quiet
PINS := .ci/constraints.txt
BASE := $(VENV)/.base
READY := $(VENV)/.ready
TESTING := $(VENV)/.testing

.DEFAULT_GOAL := help
.PHONY: help demo test lint types spec spec-check bench rule-rates fuzz many pins clean

help: ## list the targets
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/\1\t\2/p' Makefile | while IFS="$$(printf '\t')" read -r name does; \
		do printf '  make %-11s %s\n' "$$name" "$$does"; done

demo: $(READY) ## check one sound and one contradictory prescription
	@$(call expect,0,spaced-upper-front)
	@$(call expect,1,intrusion-with-overbite-kept)

# wellposed check on example $(2) must end with exit status $(1)
define expect
printf '\n$$ wellposed check examples/$(2)/prescription.json\n\n'; \
status=0; $(BIN)/wellposed check examples/$(2)/prescription.json || status=$$?; \
printf '\n(exit status %s)\n' "$$status"; \
test "$$status" -eq $(1) || { echo "demo: expected exit status $(1) for $(2)" >&2; exit 1; }
endef

test: lint types spec-check ## lint, types, generated files, then every test
	$(BIN)/python -m pytest -n 2 --dist loadgroup

lint: $(TESTING) ## ruff: rules and format
	$(BIN)/ruff check
	$(BIN)/ruff format --check

types: $(TESTING) ## mypy, strict
	$(BIN)/mypy

spec: $(TESTING) ## write again what is generated: schemas, gate, rules, tables of the specification, example reports
	$(BIN)/python -m wellposed.generate
	$(BIN)/python -m wellposed_converters.xml.generate
	$(BIN)/python -m wellposed_converters.fhir.generate
	$(BIN)/python -m tests.spec.blocks
	$(BIN)/python tests/examples/regenerate.py

spec-check: $(TESTING) ## fail if a generated file is not current
	$(BIN)/python -m wellposed.generate --check
	$(BIN)/python -m wellposed_converters.xml.generate --check

bench: $(TESTING) ## measure
	$(BIN)/python tests/bench/bench.py
	$(BIN)/python tests/bench/notes.py
	$(BIN)/python tests/bench/reviews.py

rule-rates: $(TESTING) ## how often each clinical rule speaks of 500 sound prescriptions
	$(BIN)/python -m tests.validator.wellposed.rules.rates

fuzz: $(TESTING) ## 50,000 mutants through the model and every schema validator
	WELLPOSED_MUTANTS=50000 $(BIN)/python -m pytest tests/spec/test_agreement.py

many: $(TESTING) ## 20,000 documents a form there and back, 20,000 mutants of XML, 200 kills of the intake
	WELLPOSED_ROUND_TRIPS=20020 WELLPOSED_XML_MUTANTS=20000 WELLPOSED_XML_TREES=3000 WELLPOSED_CONVERSIONS=20000 \
		WELLPOSED_KILLS=200 WELLPOSED_BYTE_MUTANTS=60000 $(BIN)/python -m pytest -n 2 tests/converters/wellposed_converters/xml \
		tests/converters/wellposed_converters/fhir tests/converters/wellposed_converters/tables \
		tests/validator/wellposed/exchange tests/validator/wellposed/reading/test_byte_mutants.py

pins: ## write the pinned versions anew from a fresh environment
	rm -rf $(VENV)-pins
	$(PYTHON) -m venv $(VENV)-pins
	$(VENV)-pins/bin/python -m pip --disable-pip-version-check --quiet install '.[test]'
	{ sed -n 1p $(PINS); $(VENV)-pins/bin/python -m pip --disable-pip-version-check freeze --exclude wellposed; } > $(PINS).new
	mv $(PINS).new $(PINS)
	rm -rf $(VENV)-pins

clean: ## remove the environment and every cache
	rm -rf $(VENV) $(VENV)-pins .pytest_cache .mypy_cache .ruff_cache .hypothesis build dist
	find validator converters tests -name __pycache__ -type d -exec rm -rf {} +

# Set-up, in three steps with a stamp each: an environment, the package, the tools of the tests.
$(BASE):
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo 'Python 3.11 or newer is needed: make PYTHON=/path/to/python3.11 ...' >&2; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || \
		{ echo 'Python cannot make environments here; install its venv module (Debian, Ubuntu: apt-get install python3-venv).' >&2; exit 1; }
	$(PYTHON) -m venv --clear $(VENV)
	@touch $@

$(READY): $(BASE) pyproject.toml $(PINS)
	$(PIP) install --constraint $(PINS) hatchling
	$(PIP) install --constraint $(PINS) --no-build-isolation --editable .
	@touch $@

$(TESTING): $(READY)
	$(PIP) install --constraint $(PINS) --no-build-isolation --editable '.[test]'
	@touch $@
