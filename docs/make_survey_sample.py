"""Takes the sample of surveyed women that designs are tried out on.

Usage: python docs/make_survey_sample.py SURVEY.csv

SURVEY.csv is the public data of ANSUR II (2012), women, lengths in mm. Its rows are ordered by
stature, and from each of 200 stretches of equal length the one in the middle is taken: a systematic
sample, the same whenever it is taken.
"""

from __future__ import annotations

import csv
import sys
from pathlib import Path

SAMPLE = 200
KEPT = (
    "age_years", "waistcircumference", "buttockcircumference", "chestcircumference",
    "bicepscircumferenceflexed", "wristcircumference", "headcircumference",
    "neckcircumferencebase", "waistbacklength", "thighcircumference", "stature", "weightkg",
)  # fmt: skip
SOURCE = "ANSUR II (NATICK/TR-15/007, 2014), public data of 2017"
OUT = Path(__file__).parents[1] / "src" / "frogless" / "body" / "data" / "survey_women.csv"


def main(survey: Path) -> None:
    """Writes the sample."""
    with survey.open(encoding="utf-8", newline="") as file:
        rows = sorted(
            csv.DictReader(file), key=lambda row: (float(row["stature"]), int(row["row"]))
        )
    chosen = [rows[(2 * i + 1) * len(rows) // (2 * SAMPLE)] for i in range(SAMPLE)]
    with OUT.open("w", encoding="utf-8", newline="") as file:
        table = csv.writer(file, lineterminator="\n")
        table.writerow(("number", *KEPT, "source", "basis"))
        for number, row in enumerate(chosen, 1):
            table.writerow((number, *(row[key] for key in KEPT), SOURCE, "published"))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
