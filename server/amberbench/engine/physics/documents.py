"""What caramel and what lies beside it are made of, and what they lie on."""

from ..core.field_kinds import either
from .fields import BASE, MATERIAL

DOCUMENTS = {
    "Material": either(MATERIAL["alternatives"], "a built-in material, a composition or constants"),
    "Base": either(BASE["alternatives"], "a built-in base or one of its own"),
}
