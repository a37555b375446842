#!/usr/bin/env python3
"""Compares two results written by `analyse --json`: an older program's and this one's.

Keys that were renamed count as the same. Every other difference, down to the last digit, is looked
up in intended_changes.csv beside this file (place: a regular expression that matches the whole
place of the difference; now: one that matches the new value, if given; why) and printed below its
reason; lists of answers and of checks are compared by their question and name, not by their place.
What no line explains is printed last, and makes the exit status 1. Use:

    python3 compare_results.py old.json new.json
"""

import csv
import json
import pathlib
import re
import sys

RENAMED = {"mode": "levelEffect", "conditionalSd": "levelEffectSd"}
# What tells the items of a list apart: the first of these that all items have.
NAMED_BY = (("question",), ("check",), ("factor", "level", "value"), ("factor", "level", "grafts"))
TABLE = pathlib.Path(__file__).with_name("intended_changes.csv")


def renamed(value):
    if isinstance(value, dict):
        return {RENAMED.get(key, key): renamed(inner) for key, inner in value.items()}
    return [renamed(inner) for inner in value] if isinstance(value, list) else value


def by_name(items):
    """Items of a list by what names them, else by their place."""
    for names in NAMED_BY:
        if items and all(isinstance(item, dict) and set(names) <= item.keys() for item in items):
            return {", ".join(str(item[name]) for name in names): item for item in items}
    if items and all(isinstance(i, str) and re.match(r"[^:.]{3,40}: ", i) for i in items[1:]):
        return {item.split(": ")[0] if i else 0: item for i, item in enumerate(items)}
    return dict(enumerate(items))


def differences(old, new, place=""):
    """Place, old and new value of each difference; None where there is none."""
    if isinstance(old, list) and isinstance(new, list):
        yield from of_items(by_name(old), by_name(new), place + "[{}]")
    elif isinstance(old, dict) and isinstance(new, dict):
        yield from of_items(old, new, place + ".{}" if place else "{}")
    elif type(old) is not type(new) or old != new:
        yield place, old, new


def of_items(old, new, place):
    for key in [*old, *(key for key in new if key not in old)]:
        here = place.format(key)
        if key in old and key in new:
            yield from differences(old[key], new[key], here)
        else:
            yield here, old.get(key), new.get(key)


def short(value):
    text = "nothing" if value is None else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= 150 else text[:147] + "..."


def explained(place, new, lines):
    for line in lines:
        said = new if isinstance(new, str) else json.dumps(new)
        if re.fullmatch(line["place"], place) and re.search(line["now"], said):
            return line["why"]
    return None


def main():
    old, new = (json.load(open(path, encoding="utf-8")) for path in sys.argv[1:3])
    with open(TABLE, encoding="utf-8", newline="") as table:
        lines = list(csv.DictReader(table))
    found = {line["why"]: [] for line in lines}
    for place, before, now in differences(renamed(old), new):
        found.setdefault(explained(place, now, lines), []).append((place, before, now))
    unexplained = found.pop(None, [])
    for why, those in [*found.items(), ("NOT EXPLAINED", unexplained)]:
        if those:
            print(f"{why} ({len(those)}):")
            for place, before, now in those:
                print(f"  {place}: {short(before)}, now {short(now)}")
    print(f"{sum(map(len, found.values()))} differences intended, {len(unexplained)} not explained")
    return 1 if unexplained else 0


if __name__ == "__main__":
    sys.exit(main())
