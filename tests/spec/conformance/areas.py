"""The generated areas of the kit, out of the tables of the tests: ``python -m tests.spec.conformance.areas``.

The area ``clinical`` is written by ``clinical``. Cases are numbered in the order of the rows: once a version is
released, a row goes behind those that were, or ``test_frozen`` fails.
"""

from tests.spec.conformance import area_canonical, area_csv, area_fhir, area_review, area_signature, area_xml, kit
from tests.spec.conformance.laying import lay

AREAS = tuple(module.AREA for module in (area_canonical, area_csv, area_fhir, area_review, area_signature, area_xml))


def main():
    """Write them, then digests and manifest."""
    for area in AREAS:
        lay(area)
    kit.main()


if __name__ == "__main__":
    main()
