"""Shape in and shape out: marshmallow schemas, most of them generated from the engine's fields."""
