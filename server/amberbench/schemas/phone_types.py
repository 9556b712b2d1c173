"""TypeScript types of every engine function, generated from the engine's fields: `pwa/src/engine/types.d.ts`."""

import json

from amberbench.engine import fields as engine_fields

from .records import Field, Fields, record_names, sides

HEAD = """\
// Generated from server/amberbench/engine/fields.py by `amberbench types`. Do not edit.
// SI units, temperatures in °C; the unit stands at the end of each name.
"""


def phone_types() -> str:
    """The text of `types.d.ts`: an interface for every record, and `Functions` from name to request and reply."""
    names = record_names()
    asked, answered = sides()
    parts = [HEAD]
    for key, (name, fields) in names.items():
        if key in asked and key in answered:
            raise ValueError(f"{name} is used in a request and in a reply: describe the two apart")
        parts.append(_interface(name, fields, key in asked, names))
    parts.append(_functions(names))
    return "\n".join(parts)


def _interface(name: str, fields: Fields, asked: bool, names: dict[int, tuple[str, Fields]]) -> str:
    lines = [f"export interface {name} {{"]
    for field_name, field in fields.items():
        lines.append(f"  /** {_comment(field)} */")
        optional = "?" if asked and "default" in field else ""
        lines.append(f"  {field_name}{optional}: {_type(field, asked, names)};")
    return "\n".join([*lines, "}\n"])


def _comment(field: Field) -> str:
    words: str = field["meaning"]
    if field["kind"] in ("number", "integer"):
        unit = f" {field['unit']}" if field["unit"] else ""
        words += f"; {field['low']:g} to {field['high']:g}{unit}"
    if field.get("default") is not None:
        words += f"; {json.dumps(field['default'], ensure_ascii=False)} when left out"
    return words


def _type(field: Field, asked: bool, names: dict[int, tuple[str, Fields]]) -> str:
    written = _bare_type(field, names)
    nullable = "default" in field and (asked or field["default"] is None)
    return f"{written} | null" if nullable and written != "unknown" else written


def _bare_type(field: Field, names: dict[int, tuple[str, Fields]]) -> str:
    kind = field["kind"]
    if kind == "record":
        return names[id(field["fields"])][0]
    if kind == "choice":
        return " | ".join(json.dumps(option, ensure_ascii=False) for option in field["options"])
    if kind == "many":
        item = _bare_type(field["item"], names)
        return f"({item})[]" if "|" in item else f"{item}[]"
    if kind == "either":
        return " | ".join(_bare_type(one, names) for one in field["alternatives"])
    plain = {"number": "number", "integer": "number", "boolean": "boolean", "text": "string", "document": "unknown"}
    return plain[kind]


def _functions(names: dict[int, tuple[str, Fields]]) -> str:
    lines = ["export interface Functions {"]
    for function, both in engine_fields.FUNCTIONS.items():
        request, reply = names[id(both["request"])][0], names[id(both["reply"])][0]
        lines.append(f'  "{function}": {{ request: {request}; reply: {reply} }};')
    return "\n".join([*lines, "}\n"])
