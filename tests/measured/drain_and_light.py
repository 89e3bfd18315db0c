"""Recomputes drain fractions, EC ratios and use per light from the open records, apart from the library.

Usage: python3 drain_and_light.py <folder of the open data sets>; prints JSON. Standard library only.
"""

import csv
import json
import math
import sys
from collections import defaultdict
from pathlib import Path


def rows(path):
    with open(path, newline="", encoding="utf8") as handle:
        return list(csv.DictReader(handle))


def number(text):
    return float(text) if text != "" else None


def light_by_day(path):
    """Trapezium rule over each day, midnight to midnight, bridging gaps of up to two hours."""
    readings = rows(path)
    sums = defaultdict(float)
    last = None
    for index, row in enumerate(readings):
        value = number(row["global_radiation_W_m2"])
        if value is None or value < -20 or value > 5000:
            continue
        value = max(value, 0.0)
        if last is not None:
            start, before = last
            # A piece that ends at midnight belongs to the day before.
            day = readings[index - 1]["time_local"][:10]
            same = readings[start]["time_local"][:10] == day
            if index - start <= 24 and same:
                sums[day] += (before + value) / 2 * (index - start) * 300 * 1e-4
        last = (index, value)
    return sums


def slabs(folder):
    light = light_by_day(folder / "outside_weather_5min.csv")
    result = {}
    for compartment in ("2", "5"):
        applied = defaultdict(list)
        drained = defaultdict(list)
        per_light = {}
        for row in rows(folder / f"irrigation_drain_daily_compartment_{compartment}.csv"):
            water, drain = number(row["irrigation_L_m2"]), number(row["drain_L_m2"])
            if water is None or drain is None:
                continue
            day = row["date"]
            applied[day[:7]].append(water)
            drained[day[:7]].append(drain)
            if water > 0 and light.get(day, 0.0) > 50:
                per_light[day] = (water - drain) * 1000 / light[day]
        ratios = {}
        for row in rows(folder / f"lab_feed_drain_compartment_{compartment}.csv"):
            feed, drain = number(row["feed_ec_dS_m"]), number(row["drain_ec_dS_m"])
            if feed is not None and drain is not None:
                ratios[row["date"]] = drain / feed
        result[compartment] = {
            "drain_fraction": {
                month: math.fsum(drained[month]) / math.fsum(applied[month])
                for month in applied
                if math.fsum(applied[month]) > 0
            },
            "ec_ratio": ratios,
            "ml_per_light": per_light,
            "mean_ml_per_light": math.fsum(per_light.values()) / len(per_light),
        }
    return result


def lysimeter(folder):
    groups = defaultdict(list)
    for row in rows(folder / "lysimeter_daily_high_and_low_ec.csv"):
        names = ("feed_mL_plant_day", "drain_mL_plant_day", "feed_ec_dS_m", "drain_ec_dS_m")
        values = [number(row[name]) for name in names]
        if None not in values and values[0] > 0 and values[1] > 0:
            groups[row["treatment"] + " " + row["replicate"]].append(values)
    result = {}
    for name, values in groups.items():
        feed = math.fsum(v[0] for v in values)
        drain = math.fsum(v[1] for v in values)
        feed_salt = math.fsum(v[0] * v[2] for v in values)
        drain_salt = math.fsum(v[1] * v[3] for v in values)
        result[name] = {
            "days": len(values),
            "drain_fraction": drain / feed,
            "feed_ec": feed_salt / feed,
            "drain_ec": drain_salt / drain,
            "steady_fraction": (feed_salt / feed) / (drain_salt / drain),
            "salt_not_drained": 1 - drain_salt / feed_salt,
        }
    return result


data = Path(sys.argv[1])
print(
    json.dumps(
        {
            "slabs": slabs(data / "01_greenhouse_tomato_slab_5min"),
            "lysimeter": lysimeter(data / "03_greenhouse_tomato_lysimeter_daily"),
        }
    )
)
