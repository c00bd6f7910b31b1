"""A case on a page: its arches, its measures and its room as drawings, what is said of it in words."""

from wellposed.render.sheet.history_sheet import history_sheet
from wellposed.render.sheet.order_sheet import order_sheet
from wellposed.render.sheet.page import Page, html
from wellposed.render.sheet.pdf import INSTALL, PdfMissingError, pdf
from wellposed.render.sheet.review_sheet import review_sheet
from wellposed.render.sheet.svg import svg

__all__ = ["INSTALL", "Page", "PdfMissingError", "history_sheet", "html", "order_sheet", "pdf", "review_sheet", "svg"]
