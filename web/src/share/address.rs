//! Where a link leads: the page's own address, or one that the person names, where the page's own is of no use elsewhere.

use crate::browser::LocalShelf;
use crate::shelf::Shelf;

/// Where the address that the person named is kept.
const KEY: &str = "thinwright.address";

/// Who can open the page's own address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Home {
    /// Whoever reaches the server.
    Served,
    /// This device alone: it serves the page to itself.
    ThisDevice,
    /// Whoever has the same file at the same place.
    File,
}

/// An address without what stands behind `#`, and who can open it.
pub(crate) fn home(href: &str) -> (&str, Home) {
    let base = href.split('#').next().unwrap_or(href);
    let Some(rest) = web(base) else {
        return (base, Home::File);
    };
    let host = rest.split(['/', '?']).next().unwrap_or(rest);
    let host = host.rsplit('@').next().unwrap_or(host);
    let name = if host.starts_with('[') {
        host.split_inclusive(']').next().unwrap_or(host)
    } else {
        host.split(':').next().unwrap_or(host)
    };
    let own = name == "localhost"
        || name.ends_with(".localhost")
        || name == "[::1]"
        || name.starts_with("127.");
    let home = if own { Home::ThisDevice } else { Home::Served };
    (base, home)
}

/// What stands behind `https://` or `http://`.
fn web(address: &str) -> Option<&str> {
    let rest = address.strip_prefix("https://");
    let rest = rest.or_else(|| address.strip_prefix("http://"))?;
    (!rest.is_empty() && !rest.starts_with('/')).then_some(rest)
}

/// An address that the person named, fit to stand before `#`.
pub(crate) fn named(typed: &str) -> Option<&str> {
    let base = typed.trim().split('#').next().unwrap_or_default();
    let plain = base.bytes().all(|b| b.is_ascii_graphic());
    (plain && web(base).is_some()).then_some(base)
}

/// The page's own address.
pub(crate) fn own() -> Option<String> {
    web_sys::window()?.location().href().ok()
}

/// The address that the person named, if any.
pub(crate) fn kept() -> Option<String> {
    let kept = LocalShelf::new().get(KEY)?;
    named(&kept).map(str::to_owned)
}

/// Keeps an address that the person named; an empty text takes it back. `false` where it cannot be kept.
pub(crate) fn keep(address: &str) -> bool {
    LocalShelf::new().put(KEY, address)
}

/// What stands before the `#` of a link that another device can open: a page that is served leads to itself, any other to
/// where the person says. A device's own address stands in for a better one; a file has none.
pub(crate) fn base() -> Option<String> {
    let own = own()?;
    match home(&own) {
        (base, Home::Served) => Some(base.to_owned()),
        (base, Home::ThisDevice) => kept().or_else(|| Some(base.to_owned())),
        (_, Home::File) => kept(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_is_known_who_can_open_an_address() {
        let check = |href: &str, base: &str, who: Home| assert_eq!(home(href), (base, who));
        check(
            "https://a.org/x/?q#strategy",
            "https://a.org/x/?q",
            Home::Served,
        );
        check(
            "http://192.168.1.4:8080/",
            "http://192.168.1.4:8080/",
            Home::Served,
        );
        check(
            "http://127.0.0.1:8080/#",
            "http://127.0.0.1:8080/",
            Home::ThisDevice,
        );
        check("http://[::1]:80/", "http://[::1]:80/", Home::ThisDevice);
        check("http://localhost", "http://localhost", Home::ThisDevice);
        check(
            "http://u@localhost/",
            "http://u@localhost/",
            Home::ThisDevice,
        );
        check(
            "https://localhost.org/",
            "https://localhost.org/",
            Home::Served,
        );
        check(
            "file:///E:/page.html#j=1",
            "file:///E:/page.html",
            Home::File,
        );
    }

    #[test]
    fn only_addresses_of_the_web_are_taken() {
        assert_eq!(named(" https://a.org/x#top "), Some("https://a.org/x"));
        for none in [
            "",
            "a.org",
            "http://",
            "http:///x",
            "file:///x",
            "https://a b",
        ] {
            assert_eq!(named(none), None, "{none}");
        }
    }
}
