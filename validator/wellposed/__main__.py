"""``python -m wellposed``."""

from wellposed.commands import main

if __name__ == "__main__":
    main(prog_name="wellposed")
