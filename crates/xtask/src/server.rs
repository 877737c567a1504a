//! A static server for this machine alone. The browser tests include this file, so that they see what a person sees.

use std::io::{self, BufRead as _, BufReader, Read as _, Write as _};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

/// What the page may load: its own files, nothing inline, no other host. `web/index.html` and `Trunk.toml` say the same.
pub(crate) const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
    img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; \
    form-action 'none'";

/// How long a browser may take to send its request or take its answer.
const PATIENCE: Duration = Duration::from_secs(10);
/// The longest request read, in bytes.
const LONGEST_REQUEST: u64 = 16 * 1024;

/// A folder, served.
pub(crate) struct Server {
    listener: TcpListener,
    folder: Arc<Path>,
    address: SocketAddr,
}

impl Server {
    /// Listens on the first free port; port 0 lets the system choose.
    pub(crate) fn bind(folder: PathBuf, mut ports: std::ops::Range<u16>) -> io::Result<Server> {
        let mut last = io::Error::other("no port to try");
        let listener =
            ports.find_map(
                |port| match TcpListener::bind((Ipv4Addr::LOCALHOST, port)) {
                    Ok(listener) => Some(listener),
                    Err(why) => {
                        last = why;
                        None
                    }
                },
            );
        let listener = listener.ok_or(last)?;
        let address = listener.local_addr()?;
        Ok(Server {
            listener,
            folder: folder.into(),
            address,
        })
    }

    /// Where the page is.
    pub(crate) fn address(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// Answers as long as it is wanted; after that, one more connection ends it.
    pub(crate) fn run(self, wanted: &AtomicBool) {
        while wanted.load(Ordering::Relaxed) {
            if let Ok((stream, _)) = self.listener.accept() {
                let folder = Arc::clone(&self.folder);
                // A browser that hangs up early loses only its own answer.
                std::thread::spawn(move || answer(&stream, &folder).unwrap_or_default());
            }
        }
    }
}

fn answer(stream: &TcpStream, folder: &Path) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut reader = BufReader::new(stream.take(LONGEST_REQUEST));
    let mut request = String::new();
    reader.read_line(&mut request)?;
    let mut header = String::new();
    while reader.read_line(&mut header)? > 2 {
        header.clear();
    }
    let mut words = request.split_whitespace();
    let (method, target) = (
        words.next().unwrap_or_default(),
        words.next().unwrap_or_default(),
    );
    if method != "GET" && method != "HEAD" {
        return send(stream, "405 Method Not Allowed", &["Allow: GET, HEAD"], &[]);
    }
    let Some((name, content)) =
        file_name(target).and_then(|name| Some((name, std::fs::read(folder.join(name)).ok()?)))
    else {
        return send(stream, "404 Not Found", &[], &[]);
    };
    let kind = format!("Content-Type: {}", kind(name));
    let keep = if fingerprinted(name) {
        "Cache-Control: max-age=31536000, immutable"
    } else {
        "Cache-Control: no-cache"
    };
    let length = format!("Content-Length: {}", content.len());
    let body = if method == "GET" {
        content.as_slice()
    } else {
        &[]
    };
    send(stream, "200 OK", &[&kind, keep, &length], body)
}

fn send(mut stream: &TcpStream, status: &str, headers: &[&str], body: &[u8]) -> io::Result<()> {
    let mut head = format!(
        "HTTP/1.1 {status}\r\nConnection: close\r\nContent-Security-Policy: {POLICY}\r\n\
         X-Content-Type-Options: nosniff\r\nReferrer-Policy: no-referrer\r\n"
    );
    if !headers
        .iter()
        .any(|header| header.starts_with("Content-Length"))
    {
        head += "Content-Length: 0\r\n";
    }
    for header in headers {
        head += header;
        head += "\r\n";
    }
    stream.write_all(head.as_bytes())?;
    stream.write_all(b"\r\n")?;
    stream.write_all(body)
}

/// The file that a request names, if it can only lie inside the folder: nothing hidden, no way up, no other root.
fn file_name(target: &str) -> Option<&str> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    if path.is_empty() {
        return Some("index.html");
    }
    let plain = |c: char| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.');
    let safe = |part: &str| !part.is_empty() && !part.starts_with('.') && part.chars().all(plain);
    path.split('/').all(safe).then_some(path)
}

/// Whether a name changes with the content, so that it may be kept for ever.
fn fingerprinted(name: &str) -> bool {
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    let tail = stem.rsplit_once('-').map_or("", |(_, tail)| tail);
    tail.len() == 16 && tail.chars().all(|c| c.is_ascii_hexdigit())
}

fn kind(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_files_inside_the_folder_have_a_name() {
        assert_eq!(file_name("/"), Some("index.html"));
        assert_eq!(
            file_name("/app-0123456789abcdef.js?x=1"),
            Some("app-0123456789abcdef.js")
        );
        assert_eq!(file_name("/a/b.css"), Some("a/b.css"));
        let ways_out = [
            "/../Cargo.toml",
            "/a/../../b",
            "//etc/passwd",
            "/.git/config",
            "/%2e%2e/b",
            "/a\\..\\b",
            "/C:/b",
            "b",
            "",
        ];
        for way in ways_out {
            assert_eq!(file_name(way), None, "{way}");
        }
    }

    #[test]
    fn only_fingerprinted_names_are_kept_for_ever() {
        assert!(fingerprinted("thinwright-web-4a73dd4bcadf94e9.wasm"));
        assert!(!fingerprinted("index.html"));
        assert!(!fingerprinted("thinwright-web.js"));
    }

    /// The program is refused by browsers, or compiled late, under another type.
    /// Source: wasmwebapi (the type that streaming compilation demands).
    #[test]
    fn the_program_has_its_type() {
        assert_eq!(kind("a-b.wasm"), "application/wasm");
        assert_eq!(kind("a.js"), "text/javascript; charset=utf-8");
    }
}
