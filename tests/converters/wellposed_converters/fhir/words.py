"""The words of the page on FHIR that are not the format's: FHIR's, HTTP's, and those of the form itself."""

from wellposed_converters.fhir import comparing, faults, reading, sections

FHIR_ELEMENTS = {
    *("code", "description", "details", "diagnostics", "display", "evidence", "expression", "identifier", "intent"),
    *("meta", "output", "performer", "requester", "source", "status", "timestamp", "type", "text"),
}
"""Each an element of a resource the page speaks of; the tests look them up."""

FHIR_CODES = {
    *("active", "collection", "rejected", "empty", "business-rule", "code-invalid", "conflict", "invariant"),
    *("required", "structure", "fatal", "warning", "information"),
}
PROBLEM_MEMBERS = {"detail", "errors", "instance", "title", "open-questions", "not-checked"}
OWN = {"fhir", "clear-aligner-prescription", "left-out", "member", "note-about", "tooth-state", "within"}
EXTENSIONS = {one.name for one in (*sections.ON_ORDER, *sections.ON_SERIES, sections.FINDING, sections.PROBLEM)}
NOT_CARRIED = {
    *(comparing.NARRATIVE, comparing.OTHER_RESOURCE),
    *(reading.LEFT_OUT, reading.NO_ORIGINAL, reading.NOT_THERE),
}
WORDS = {*FHIR_ELEMENTS, *FHIR_CODES, *PROBLEM_MEMBERS, *OWN, *EXTENSIONS, *NOT_CARRIED, *faults.RULES}
