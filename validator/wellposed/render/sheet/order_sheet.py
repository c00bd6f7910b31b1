"""The sheet of an order: a prescription, what the check says of it, what it says tooth by tooth."""

from __future__ import annotations

from wellposed.kinematics.mouth import Mouth
from wellposed.kinematics.translate import Translation
from wellposed.model import Prescription
from wellposed.render.headline import headline
from wellposed.render.sheet.chart import arch_chart
from wellposed.render.sheet.gauges import gauges
from wellposed.render.sheet.ordered import ordered
from wellposed.render.sheet.page import Page
from wellposed.render.sheet.parts import (
    CLOSING,
    arches,
    digest_facts,
    findings,
    measures,
    notes,
    read_back,
    room,
    running,
)
from wellposed.render.sheet.profiles import MEASURES
from wellposed.report import Report
from wellposed.vocabulary.teeth import ARCHES

__all__ = ["order_sheet"]


def order_sheet(prescription: Prescription, report: Report) -> Page:
    """The page of a prescription and the report on it."""
    mouth = Mouth(prescription)
    translation = Translation(mouth)
    name = f"{prescription.id}, revision {prescription.revision}"
    return Page(
        f"Prescription {name}",
        running("Prescription", prescription),
        (
            ("Patient", prescription.patient.reference),
            ("Issued", prescription.issued),
            *digest_facts(prescription),
        ),
        _answer(report),
        (
            arches([arch_chart(ordered(translation, arch)) for arch in ARCHES], mouth, planned=False),
            *measures(gauges(mouth, MEASURES)),
            room(mouth),
            findings(report.findings),
            read_back(prescription),
            *notes(prescription.notes),
        ),
        CLOSING,
        prescription.issued,
    )


def _answer(report: Report) -> tuple[str, str]:
    fit = "Fit to send." if report.fit_to_send else "Not fit to send."
    return f"{report.verdict.replace('-', ' ').capitalize()}.", f"{headline(report)} {fit}"
