#!/usr/bin/env python3
"""Compares two results written by `analyse --json`: an older program's and this one's.

Keys that were renamed count as the same, keys that were added are listed; anything else that
differs, down to the last digit, is an error. Use:

    python3 compare_results.py old.json new.json
"""

import json
import sys

RENAMED = {"mode": "levelEffect", "conditionalSd": "levelEffectSd"}
ADDED = {"entanglement", "blocks"}  # the first at the top level; it stands inside "rootstock", too
EXPECTED = {"version": (1, 2)}


def renamed(value):
    if isinstance(value, dict):
        return {RENAMED.get(key, key): renamed(inner) for key, inner in value.items()}
    return [renamed(inner) for inner in value] if isinstance(value, list) else value


def differences(old, new, place=""):
    if isinstance(old, dict) and isinstance(new, dict):
        for key in sorted(old.keys() | new.keys()):
            here = f"{place}.{key}" if place else key
            if key not in new:
                yield f"{here}: gone"
            elif key not in old:
                if here in ADDED:
                    print(f"added: {here}")
                else:
                    yield f"{here}: new"
            elif here in EXPECTED and (old[key], new[key]) == EXPECTED[here]:
                continue
            else:
                yield from differences(old[key], new[key], here)
    elif isinstance(old, list) and isinstance(new, list):
        if len(old) != len(new):
            yield f"{place}: {len(old)} items, now {len(new)}"
        for i, pair in enumerate(zip(old, new)):
            yield from differences(*pair, f"{place}[{i}]")
    elif type(old) is not type(new) or old != new:
        yield f"{place}: {old!r}, now {new!r}"


def main():
    old, new = (json.load(open(path, encoding="utf-8")) for path in sys.argv[1:3])
    found = list(differences(renamed(old), new))
    print("\n".join(found) if found else "equal, but for renamed and added keys")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
