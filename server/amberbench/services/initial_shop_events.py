"""What is written into the log when a shop begins: bodies of `shop_set` events, and the invented shop's trade."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import Any

from amberbench import text
from amberbench.engine.shop import fields as fields_shop

Body = dict[str, Any]
SATURDAY = 5
ONLY_IN_OLD_DOCUMENTS = {"id", "about", "figures", "plan_defaults", "basis"}


def of_seed(seed: dict[str, Any], language: str = "en") -> list[Body]:
    """The facts of a file of `seed_data`: each row's each field, figures with basis and source, words in a language."""
    return [
        {"doc": doc, "field": field, "basis": "assumed"}
        | {name: row[name] for name in ("basis", "source") if name in row}
        | {"value": next((row[one] for one in text.chain(language) if one in row), row["value"])}
        for doc, rows in seed["docs"].items()
        for field, row in rows.items()
    ]


def of_trade(trade: dict[str, Any], begins_ms: int, language: str = "en") -> Iterator[dict[str, Any]]:
    """Members of the events of invented lots, boxes packed and orders: stream, kind, at_ms, body.

    Days count from the one on which the shop begins, hours by this machine's clock: orders are for the week after it.
    """
    today = datetime.fromtimestamp(begins_ms / 1000).replace(hour=0, minute=0, second=0, microsecond=0)
    working = [day for day in (today + timedelta(days=n) for n in range(1, 20)) if day.weekday() < SATURDAY]

    def told(value: Any) -> Any:
        if type(value) is not dict:
            return value
        if "value" in value:
            return next((value[one] for one in text.chain(language) if one in value), value["value"])
        if "code" in value:
            return f"{today + timedelta(days=value['code']):%y%j}A"
        day = working[value["workday"] - 1] if "workday" in value else today + timedelta(days=value["day"])
        return int(day.replace(hour=value["hour"]).timestamp() * 1000) if "hour" in value else f"{day:%Y-%m-%d}"

    for row in trade["events"]:
        body = {name: told(value) for name, value in row["body"].items()}
        yield {
            "stream": row["stream"],
            "kind": row["kind"],
            "at_ms": told({"day": row["day"], "hour": row["hour"]}),
            "body": body,
        }


def of_nothing() -> list[Body]:
    """The one fact a shop of one's own begins with."""
    return [{"doc": "shop", "field": "invented", "value": False, "basis": "typed"}]


def of_document(document: dict[str, Any]) -> list[Body]:
    """The facts in a shop document as servers kept it before the shop was a fold: it had `figures` for the basis."""
    figures = document.get("figures", {})
    own = {
        name: value for name, value in document.items() if name not in ONLY_IN_OLD_DOCUMENTS | set(fields_shop.LISTS)
    }
    facts = list(_facts("shop", own, "", figures))
    for name in fields_shop.LISTS:
        for row in document.get(name, []):
            facts += _facts(f"{name}/{_row_id(name, row)}", row, f"{name}[].", figures)
    return facts


def _row_id(name: str, row: dict[str, Any]) -> str:
    """Its own id; bars and tables had none, and their size told them apart."""
    millimetres = "-".join(f"{1000 * value:g}" for field, value in row.items() if field.endswith("_m"))
    return str(row.get("id") or f"{name}-{millimetres}")


def _facts(doc: str, row: dict[str, Any], path: str, figures: dict[str, Any]) -> Iterator[Body]:
    for field, value in _flat(row):
        if field == "id" or value is None:
            continue
        name = field
        if field.startswith("material."):
            name = f"label.{field.removeprefix('material.')}_share"
        if name == "label.density_kg_m3_share":
            name = "density_kg_m3"
        basis = figures.get(path + field, {}).get("basis", "assumed")
        yield {"doc": doc, "field": name, "value": value, "basis": basis}


def _flat(row: dict[str, Any], before: str = "") -> Iterator[tuple[str, Any]]:
    """(dotted path, value); a base of layers stays one value."""
    for name, value in row.items():
        if isinstance(value, dict) and name not in ("base", "bottom"):
            yield from _flat(value, f"{before}{name}.")
        else:
            yield before + name, value
