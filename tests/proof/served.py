"""The page on a server of this script's own: what it is asked for is written down, it can go, and it can change."""
import hashlib
import http.server
import pathlib
import re
import shutil
import threading

FINGERPRINT = re.compile(r"-[0-9a-f]{16}\.")
KINDS = {".wasm": "application/wasm", ".js": "text/javascript", ".webmanifest": "application/manifest+json"}


def digest(content):
    return hashlib.sha256(content).hexdigest()[:16]


class Served:
    """A copy of the page that may change, and the server before it."""

    def __init__(self, dist, folder):
        shutil.rmtree(folder, ignore_errors=True)
        shutil.copytree(dist, folder)
        self.folder, self.asked, self.port = pathlib.Path(folder), [], 0
        self.start()

    def start(self):
        served = self

        class Handler(http.server.SimpleHTTPRequestHandler):
            extensions_map = {**http.server.SimpleHTTPRequestHandler.extensions_map, **KINDS}

            def __init__(self, *given, **named):
                super().__init__(*given, directory=str(served.folder), **named)

            def log_message(self, *_):
                pass

            def do_GET(self):
                served.asked.append(self.path)
                super().do_GET()

            def end_headers(self):
                keep = "max-age=31536000, immutable" if FINGERPRINT.search(self.path) else "no-cache"
                self.send_header("Cache-Control", keep)
                super().end_headers()

        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", self.port), Handler)
        self.port = self.server.server_port
        self.url = f"http://127.0.0.1:{self.port}/"
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

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
