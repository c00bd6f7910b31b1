"""Which reader reads a statement, by the sort of its head."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from wellposed_converters.text.statements.measures import measure
from wellposed_converters.text.statements.motions import motion
from wellposed_converters.text.statements.staging import staging
from wellposed_converters.text.statements.statement import Bag, Context, Read
from wellposed_converters.text.statements.states import state
from wellposed_converters.text.statements.uses import use

READERS: Final[Mapping[str, Callable[[Bag, Context], Read]]] = {
    "MEASURE": measure,
    "MEANS": use,
    "MOTION": motion,
    "STATE": state,
    "FACT": state,
    "STEPS": staging,
}
