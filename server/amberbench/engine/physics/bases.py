"""The base under a slab: its layers, from the slab downwards."""

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..core.annotations import Document


# Thickness in m (assumed: what a shop is likely to have), then conductivity W/(m K), density kg/m³, specific heat
# J/(kg K) (source en_12524: stainless steel, aluminium alloy, marble, granite, plywood of 500 kg/m³), and the
# emissivity of the underside (source emissivity_manuals; granite as marble, aluminium as received).
BUILT_IN = {
    "steel_sheet": (0.0015, 17.0, 7900.0, 460.0, 0.16),
    "aluminium_tray": (0.0015, 160.0, 2800.0, 880.0, 0.09),
    "marble": (0.020, 3.5, 2800.0, 1000.0, 0.93),
    "granite": (0.030, 2.8, 2600.0, 1000.0, 0.93),
    "wood_board": (0.018, 0.13, 500.0, 1600.0, 0.90),
}
SLAB_EMISSIVITY = 0.95  # no table has caramel; food and other non-metals 0.93 to 0.95 (emissivity_manuals)
OWN_EMISSIVITY = 0.90  # of the underside of a base of one's own: most things that are not bare metal. Assumed.


def resolved_base(
    base: "Document | str | None", thickness_m: float | None = None
) -> tuple[list[tuple[float, float, float]], float, float]:
    """(layers, area ratio, emissivity of the underside).

    base: a built-in name, `{"layers": [...], "area_ratio"}` or None. A layer is (thickness m, conductivity W/(m K),
    heat capacity per volume J/(m³ K)). No base has no layers and the emissivity of the slab. thickness_m: of a
    built-in base, where somebody measured it.
    """
    if base is None:
        return [], 1.0, SLAB_EMISSIVITY
    if isinstance(base, str):
        thickness, k, rho, cp, emissivity = BUILT_IN[base]
        return [(thickness_m or thickness, k, rho * cp)], 1.0, emissivity
    layers = [
        (
            float(layer["thickness_m"]),
            float(layer["conductivity_w_mk"]),
            layer["density_kg_m3"] * layer["heat_capacity_j_kgk"],
        )
        for layer in base["layers"]
    ]
    return layers, base["area_ratio"], OWN_EMISSIVITY
