"""From the clauses of a note to a draft of a prescription, and from the draft to a prescription."""

from wellposed_converters.text.draft.drafting import Draft, Uncarried, draft
from wellposed_converters.text.draft.finish import Lack, NotFinished, answered, finish, restored

__all__ = ["Draft", "Lack", "NotFinished", "Uncarried", "answered", "draft", "finish", "restored"]
