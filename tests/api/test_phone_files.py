"""The phone's app, as the server hands it out."""

import gzip
import os

import pytest

FILES = {
    "index.html": ("text/html; charset=utf-8", "no-cache"),
    "sw.js": ("text/javascript; charset=utf-8", "no-cache"),
    "manifest.webmanifest": ("application/manifest+json", "no-cache"),
    "icon.png": ("image/png", "no-cache"),
    "assets/main-1a2b.js": ("text/javascript; charset=utf-8", "public, max-age=31536000, immutable"),
    "assets/main-1a2b.css": ("text/css; charset=utf-8", "public, max-age=31536000, immutable"),
    "assets/engine-3c4d.wasm": ("application/wasm", "public, max-age=31536000, immutable"),
}
SHELL = "<!doctype html><title>Amberbench</title>"


@pytest.fixture
def built(tmp_path):
    """A built app in the folder that the application serves."""
    folder = tmp_path / "pwa"
    for name in FILES:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(SHELL if name == "index.html" else f"// {name}\n" * 50)
    for name in ("index.html", "assets/main-1a2b.js"):
        (folder / f"{name}.gz").write_bytes(gzip.compress((folder / name).read_bytes()))
    (folder / "assets/main-1a2b.js.br").write_bytes(b"as the build made it")
    return folder


@pytest.mark.parametrize("name", FILES)
def test_each_file_has_its_type_and_its_age(client, built, name):
    response = client.get(f"/{name}")
    assert response.status_code == 200
    assert (response.headers["Content-Type"], response.headers["Cache-Control"]) == FILES[name]
    assert response.data == (built / name).read_bytes()


@pytest.mark.parametrize(
    "path", ["/", "/index.html", "/plan", "/bench/0193a1b2", "/batches/0193a1b2", "/apiary", "/?x=1"]
)
def test_every_page_of_the_app_is_its_shell_without_a_redirect(client, built, path):
    response = client.get(path)
    assert (response.status_code, response.text) == (200, SHELL)
    assert response.headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize(
    "path",
    [
        *("/assets/gone.js", "/assets/gone", "/gone.png", "/sw.js.map", "/../config.py", "/..%2fconfig.py"),
        *("/" + "a" * 256, "/plan/" + "a" * 5000, "/index.html.gz"),
    ],
)
def test_file_that_is_not_there_is_not_the_shell(client, built, path):
    response = client.get(path)
    assert response.text != SHELL
    assert response.status_code == 404


@pytest.mark.parametrize("path", ["a" * 256, "plan/" + "ñ" * 200, "assets/" + "a" * 300 + ".js", "x/" * 5000])
def test_address_longer_than_any_file_name_is_not_found(client, built, path):
    assert client.get(f"/{path}").status_code == 404


@pytest.mark.parametrize(
    ("accepts", "packing"),
    [("", None), ("gzip", "gzip"), ("br, gzip", "br"), ("gzip, br;q=0", "gzip"), ("identity", None)],
)
def test_packed_form_goes_to_who_takes_it(client, built, accepts, packing):
    response = client.get("/assets/main-1a2b.js", headers={"Accept-Encoding": accepts})
    assert response.headers.get("Content-Encoding") == packing
    assert response.headers["Vary"] == "Accept-Encoding"
    assert response.headers["Content-Type"].startswith("text/javascript")
    suffix = {"gzip": ".gz", "br": ".br", None: ""}[packing]
    assert response.data == (built / f"assets/main-1a2b.js{suffix}").read_bytes()


def test_new_release_is_served_without_a_restart(client, built):
    assert client.get("/assets/main-1a2b.js").status_code == 200
    (built / "assets/main-1a2b.js").rename(built / "assets/main-5e6f.js")
    (built / "index.html").write_text(SHELL + "<p>")
    assert client.get("/assets/main-1a2b.js").status_code == 404
    assert client.get("/assets/main-5e6f.js").status_code == 200
    assert client.get("/plan").text == SHELL + "<p>"


def test_two_builds_of_one_size_within_a_second_are_told_apart(client, built):
    old = client.get("/sw.js").headers["ETag"]
    times = (built / "sw.js").stat().st_mtime_ns
    (built / "sw.js").write_text((built / "sw.js").read_text().replace("sw", "ws"))
    os.utime(built / "sw.js", ns=(times, times))
    (built / "index.html").touch()
    response = client.get("/sw.js", headers={"If-None-Match": old})
    assert response.status_code == 200
    assert "ws" in response.text


def test_no_other_site_may_read_the_app(client, built):
    assert "Access-Control-Allow-Origin" not in client.get("/assets/main-1a2b.js").headers


def test_unchanged_shell_is_not_sent_again(client, built):
    tag = client.get("/").headers["ETag"]
    assert client.get("/", headers={"If-None-Match": tag}).status_code == 304
    (built / "index.html").write_text(SHELL + "<p>")
    assert client.get("/", headers={"If-None-Match": tag}).status_code == 200


def test_shell_cannot_be_posted_to(client, built):
    assert client.post("/plan", json={}).status_code == 405


def policy_of(headers):
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"
    return dict(part.split(" ", 1) for part in headers["Content-Security-Policy"].split("; "))


@pytest.mark.parametrize("path", ["/", "/plan", "/assets/main-1a2b.js", "/nowhere"])
def test_app_is_kept_to_its_own_files(client, built, path):
    policy = policy_of(client.get(path).headers)
    assert policy["default-src"] == "'self'"
    assert policy["script-src"] == "'self' 'wasm-unsafe-eval'"
    assert "'unsafe-inline'" not in " ".join(policy.values())
    assert policy["frame-ancestors"] == "'none'"


@pytest.mark.parametrize("path", ["/", "/plan", "/index.html"])
def test_what_opens_as_a_page_is_apart_from_who_opened_it_and_asks_leave_for_little(client, built, path):
    headers = client.get(path).headers
    assert headers["Cross-Origin-Opener-Policy"] == headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert {"camera=(self)", "screen-wake-lock=(self)", "geolocation=()"} <= set(
        headers["Permissions-Policy"].split(", ")
    )


@pytest.mark.parametrize("path", ["/assets/main-1a2b.js", "/assets/main-1a2b.css", "/nowhere"])
def test_every_file_of_the_app_is_for_its_own_origin(client, built, path):
    assert client.get(path).headers["Cross-Origin-Resource-Policy"] == "same-origin"


@pytest.mark.parametrize("path", ["/api/health", "/api/nowhere", "/assets/main-1a2b.css"])
def test_what_is_no_page_may_load_nothing(client, built, path):
    assert policy_of(client.get(path).headers) == {"default-src": "'none'", "frame-ancestors": "'none'"}


def test_app_that_was_not_built_says_so_and_the_api_works(client):
    for path in ("/", "/plan", "/assets/main.js"):
        response = client.get(path)
        assert (response.status_code, response.mimetype) == (503, "text/plain")
        assert "make" in response.text
    assert client.get("/api/health").status_code == 200
