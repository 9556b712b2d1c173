"""A camera for the stories: photos as a phone makes them, turned on their side, with place and model in them."""

import base64
import struct

from playwright.sync_api import expect

from e2e.phone import Phone

# What a camera writes beside the picture; nobody else is to read it.
SECRET = b"13.3N 52.5E, bought by somebody"

DRAW = """async ([wide, high]) => {
    const canvas = Object.assign(document.createElement("canvas"), { width: wide, height: high });
    const brush = canvas.getContext("2d");
    const shade = brush.createLinearGradient(0, 0, wide, high);
    shade.addColorStop(0, "#f2c277");
    shade.addColorStop(1, "#6d3a08");
    brush.fillStyle = shade;
    brush.fillRect(0, 0, wide, high);
    for (let n = 0; n < 4000; n++) {
        brush.fillStyle = `rgba(${(n * 97) % 255}, ${(n * 53) % 140}, 20, 0.5)`;
        brush.fillRect((n * 7919) % wide, (n * 6101) % high, 9 + (n % 40), 7 + (n % 23));
    }
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.92));
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (const byte of bytes) text += String.fromCharCode(byte);
    return btoa(text);
}"""

READ_PHOTO = """async (id) => {
    const open = indexedDB.open("amberbench");
    const db = await new Promise((yes, no) => { open.onsuccess = () => yes(open.result); open.onerror = no; });
    const get = db.transaction("photos").objectStore("photos").get(id);
    const row = await new Promise((yes) => { get.onsuccess = () => yes(get.result); });
    db.close();
    return row ? [...new Uint8Array(await row.blob.arrayBuffer())] : null;
}"""


def snap(phone: Phone, wide: int = 2400, high: int = 1800) -> bytes:
    """A JPEG lying on its side, as EXIF says, with what a camera tells of place and owner (Exif 2.3, from memory)."""
    plain = base64.b64decode(phone.page.evaluate(DRAW, [wide, high]))
    words = SECRET + b"\0"
    described = struct.pack("<HHII", 0x010E, 2, len(words), 38)
    on_its_side = struct.pack("<HHIHH", 0x0112, 3, 1, 6, 0)
    exif = b"Exif\0\0II*\0" + struct.pack("<IH", 8, 2) + described + on_its_side + struct.pack("<I", 0) + words
    return plain[:2] + b"\xff\xe1" + struct.pack(">H", len(exif) + 2) + exif + plain[2:]


def hands_over(phone: Phone, content: bytes) -> None:
    """The camera gives the app a file: what comes after the button was tapped."""
    expect(phone.page.get_by_role("button", name=phone.word("Take a photo"))).to_be_visible()
    file = {"name": "IMG_0001.jpg", "mimeType": "image/jpeg", "buffer": content}
    phone.page.locator("input[type=file][accept='image/*']").set_input_files(files=[file])  # type: ignore[list-item]


def takes_photo(phone: Phone) -> None:
    """Takes a photo where there is a button for it, and waits until the phone has kept it."""
    hands_over(phone, snap(phone))
    expect(phone.page.locator(".photo-said")).to_have_text(phone.word("Kept: it is in the record of this batch."))


def kept(phone: Phone, photo_id: str) -> bytes | None:
    """The bytes of a photo on this phone."""
    found = phone.page.evaluate(READ_PHOTO, photo_id)
    return None if found is None else bytes(found)
