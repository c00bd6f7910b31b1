"""Write the texts of the reviews made by hand again, to be read by eye: ``python -m`` this module, from the root."""

from pathlib import Path

from tests.validator.wellposed.render.review.made import REVIEWS

from wellposed.render.review import review_text

FOLDER = Path(__file__).parent / "golden"

if __name__ == "__main__":
    for name, told in REVIEWS.items():
        (FOLDER / f"{name}.txt").write_text(review_text(*told), "utf-8")
