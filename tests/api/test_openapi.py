"""The OpenAPI document describes what there is."""

import json

from amberbench.engine.products import KINDS


def document(readonly_client):
    return readonly_client.get("/api/openapi.json").get_json()


def references(node):
    if isinstance(node, dict):
        if "$ref" in node:
            yield node["$ref"]
        for inner in node.values():
            yield from references(inner)
    elif isinstance(node, list):
        for inner in node:
            yield from references(inner)


def test_every_endpoint_is_described(readonly_client):
    described = document(readonly_client)["paths"]
    for rule in readonly_client.application.url_map.iter_rules():
        if rule.rule.startswith("/api/") and rule.rule != "/api/openapi.json":
            path = rule.rule.replace("<", "{").replace(">", "}")
            for verb in rule.methods - {"HEAD", "OPTIONS"}:
                assert verb.lower() in described[path], (verb, path)


def test_every_reference_leads_somewhere(readonly_client):
    whole = document(readonly_client)
    for reference in set(references(whole)):
        node = whole
        for step in reference.removeprefix("#/").split("/"):
            node = node[step]


def test_quantity_is_a_number_a_pair_or_text_within_the_engines_range(readonly_client):
    schemas = document(readonly_client)["components"]["schemas"]
    mass = schemas["MeltPlanRequest"]["properties"]["mass_kg"]
    assert [one["type"] for one in mass["oneOf"]] == ["number", "object", "string"]
    assert (mass["oneOf"][0]["minimum"], mass["oneOf"][0]["maximum"]) == (0.05, 10)
    assert "mass_kg" in schemas["MeltPlanRequest"]["required"]
    assert "room_c" not in schemas["MeltPlanRequest"]["required"]
    assert schemas["MeltPlanReply"]["properties"]["total_s"]["type"] == "number"


def test_errors_are_described_as_problem_details(readonly_client):
    responses = document(readonly_client)["components"]["responses"]
    for response in responses.values():
        assert list(response["content"]) == ["application/problem+json"], json.dumps(response)


def test_documents_are_described_down_to_their_kinds(readonly_client):
    schemas = document(readonly_client)["components"]["schemas"]
    assert schemas["ServerRecord"]["properties"]["run"]["anyOf"][0] == {"$ref": "#/components/schemas/Run"}
    assert schemas["Run"]["discriminator"] == {"propertyName": "kind"}
    kinds = [one["$ref"].split("/")[-1] for one in schemas["Run"]["oneOf"]]
    assert kinds == [f"{kind.name.capitalize()}Run" for kind in KINDS]
    assert "StandupRun" in kinds
    assert {"kind", "melt", "cool"} <= set(schemas["SlabRun"]["required"])
    assert schemas["SlabRun"]["properties"]["kind"]["enum"] == ["slab"]
    assert schemas["MeltState"]["properties"]["burning"]["anyOf"][1] == {"type": "null"}
    assert schemas["SlabPlanReply"]["properties"]["caramel_kg"]["maximum"] == 50
