"""Wellposed: prescriptions for clear aligners that cannot be misread."""

__version__ = "0.1.0"
