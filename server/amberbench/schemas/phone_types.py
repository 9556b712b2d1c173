"""TypeScript types of every request, reply, event and document, generated from the engine's fields."""

import json

from amberbench.engine import documents, fields

from .records import Field, Record, RecordRegistry, body_name, may_be_missing, may_be_null, reply_name, request_name
from .response_documents import DOCUMENTS

HEAD = """\
// Generated from the engine's fields and documents by `amberbench types`. Do not edit.
// SI units, temperatures in °C; the unit stands at the end of each name.
// A request as it is asked may leave out what has a default; its "Full" form is as the engine has checked it.
"""
PLAIN = {"number": "number", "integer": "number", "boolean": "boolean", "text": "string", "nothing": "null"}


def phone_types() -> str:
    """The text of `pwa/src/engine/types.ts`."""
    names = RecordRegistry(DOCUMENTS, requests_asked=True)
    parts = [HEAD]
    parts += [_record(record, names) for record in names.records.values()]
    for name, described in DOCUMENTS.items():
        if described["kind"] != "record":
            asked = bool(described.get("asked"))
            parts.append(f"/** {described['meaning']} */\nexport type {name} = {_spelled(described, asked, names)};\n")
    parts += [f"export type {alias} = {name};\n" for alias, name in sorted(names.aliases.items())]
    parts.append(_map("Requests", {name: request_name(name) for name in fields.FUNCTIONS}))
    parts.append(_map("Replies", {name: reply_name(name) for name in fields.FUNCTIONS}))
    parts.append(_map("EventBodies", {kind: body_name(kind) for kind in documents.BODIES}))
    parts.append(TAIL)
    return "\n".join(parts)


TAIL = """\
export type FunctionName = keyof Requests;
export type EventKind = keyof EventBodies;
/** An event of one kind. */
export type EventOf<K extends EventKind> = Omit<BenchEvent, "kind" | "body"> & { kind: K; body: EventBodies[K] };
/** An event of a kind that this version knows; the log may hold those of a newer one. */
export type KnownEvent = { [K in EventKind]: EventOf<K> }[EventKind];
"""


def _map(name: str, members: dict[str, str]) -> str:
    lines = [f"  {json.dumps(key)}: {value};" for key, value in members.items()]
    return "\n".join([f"export interface {name} {{", *lines, "}\n"])


def _record(record: Record, names: RecordRegistry) -> str:
    lines = [f"/** {record.meaning} */", f"export type {record.name} = {{"]
    for name, field in record.fields.items():
        lines.append(f"  /** {_comment(field)} */")
        optional = "?" if may_be_missing(field, record.asked) else ""
        lines.append(f"  {name}{optional}: {_type(field, record.asked, names)};")
    return "\n".join([*lines, "};\n"])


def _comment(field: Field) -> str:
    words: str = field["meaning"]
    if field["kind"] in ("number", "integer"):
        unit = f" {field['unit']}" if field["unit"] else ""
        bounded = field["high"] < 1e299
        words += f"; {field['low']:g} to {field['high']:g}{unit}" if bounded else f";{unit}" if unit else ""
    if field.get("default") is not None:
        words += f"; {json.dumps(field['default'], ensure_ascii=False)} when left out"
    return words


def _type(field: Field, asked: bool, names: RecordRegistry) -> str:
    asked = asked or bool(field.get("asked"))
    written = _bare_type(field, asked, names)
    return f"{written} | null" if may_be_null(field, asked) and written not in ("null", "unknown") else written


def _spelled(field: Field, asked: bool, names: RecordRegistry) -> str:
    """The alternatives one by one; the type of anything else."""
    if field["kind"] != "either":
        return _type(field, asked, names)
    return " | ".join(_bare_type(one, asked, names) for one in field["alternatives"])


def _bare_type(field: Field, asked: bool, names: RecordRegistry) -> str:
    kind = field["kind"]
    if kind == "record":
        return names.of(field["fields"], asked)
    if kind == "choice":
        return " | ".join(json.dumps(option, ensure_ascii=False) for option in field["options"])
    if kind == "many":
        item = _type(field["item"], asked, names)
        return f"({item})[]" if "|" in item else f"{item}[]"
    if kind == "mapping":
        return f"Record<string, {_type(field['item'], asked, names)}>"
    if kind == "either":
        return names.of_either(field, asked) or _spelled(field, asked, names)
    if kind == "document":
        return str(field.get("of", "unknown"))
    return PLAIN[kind]
