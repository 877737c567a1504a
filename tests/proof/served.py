"""The page on a server of this script's own: what it is asked for is written down, it can go, and it can change."""
import gzip
import hashlib
import http.server
import pathlib
import re
import shutil
import threading

FINGERPRINT = re.compile(r"-[0-9a-f]{16}\.")
KINDS = {".wasm": "application/wasm", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".json": "application/json",
         ".svg": "image/svg+xml", ".png": "image/png", ".webmanifest": "application/manifest+json"}


def digest(content):
    return hashlib.sha256(content).hexdigest()[:16]


class Served:
    """A copy of the page that may change, and the server before it."""

    def __init__(self, dist, folder):
        shutil.rmtree(folder, ignore_errors=True)
        shutil.copytree(dist, folder)
        self.folder, self.asked, self.port, self.gzip = pathlib.Path(folder), [], 0, {}
        self.start()

    def start(self):
        served = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def log_message(self, *_):
                pass

            def do_GET(self):
                name = self.path.split("?")[0].lstrip("/") or "index.html"
                served.asked.append(name)
                file = served.folder / name
                if not file.is_file():
                    self.send_error(404)
                    return
                content, packed = file.read_bytes(), "gzip" in self.headers.get("Accept-Encoding", "") and file.suffix != ".png"
                self.send_response(200)
                self.send_header("Content-Type", KINDS.get(file.suffix, "text/html; charset=utf-8"))
                self.send_header("Cache-Control", "max-age=31536000, immutable" if FINGERPRINT.search(name) else "no-cache")
                if packed:
                    content = served.packed(content)
                    self.send_header("Content-Encoding", "gzip")
                self.send_header("Content-Length", str(len(content)))
                self.end_headers()
                self.wfile.write(content)

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", self.port), Handler)
        self.port = self.server.server_port
        self.url = f"http://127.0.0.1:{self.port}/"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def packed(self, content):
        """As servers send what can be packed; each once."""
        key = digest(content)
        if key not in self.gzip:
            self.gzip[key] = gzip.compress(content, 9)
        return self.gzip[key]

    def stop(self):
        self.server.shutdown()
        self.server.server_close()

    def names(self):
        return {file.name for file in self.folder.iterdir()}

    def replace(self, mark):
        """Puts another version in the place of the one that is there, whose files are gone then."""
        page = self.folder / "index.html"
        html = page.read_text()
        for file in sorted(self.folder.iterdir()):
            more = {"style": f"\n:root {{ --mark: {mark}; }}\n", "boot": f"\nglobalThis.mark = '{mark}';\n"}
            added = more.get(file.name.split("-")[0])
            if added is None or not FINGERPRINT.search(file.name):
                continue
            content = file.read_bytes() + added.encode()
            name = FINGERPRINT.sub(f"-{digest(content)}.", file.name)
            file.unlink()
            (self.folder / name).write_bytes(content)
            html = html.replace(file.name, name)
        version = digest(html.encode())
        page.write_text(re.sub(r'data-version="[0-9a-f]+"', f'data-version="{version}"', html))
        return version
