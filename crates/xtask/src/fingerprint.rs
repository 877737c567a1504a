//! File names that change with the content, and the hashes of a Content-Security-Policy.

use base64::Engine as _;
use sha2::{Digest as _, Sha256};
use std::path::Path;

/// Bytes of the digest that a file name carries: 64 bits, as many as a collision among a handful of files needs not.
const NAME_BYTES: usize = 8;

/// The start of a digest of the content, in hexadecimal digits.
pub(crate) fn digest(content: &[u8]) -> String {
    Sha256::digest(content)
        .iter()
        .take(NAME_BYTES)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// `layout.css` becomes `layout-0123456789abcdef.css`: a name that may be cached for ever.
pub(crate) fn hashed_name(name: &str, content: &[u8]) -> String {
    let digest = digest(content);
    let path = Path::new(name);
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let extension = path.extension().unwrap_or_default().to_string_lossy();
    format!("{stem}-{digest}.{extension}")
}

/// The source expression that lets one inline script or style through a policy.
pub(crate) fn policy_hash(content: &str) -> String {
    let digest =
        base64::engine::general_purpose::STANDARD.encode(Sha256::digest(content.as_bytes()));
    format!("'sha256-{digest}'")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: fips1804, digest of "abc"; csp3, how a policy writes it.
    #[test]
    fn digest_is_the_published_one() {
        assert_eq!(hashed_name("a/app.js", b"abc"), "app-ba7816bf8f01cfea.js");
        assert_eq!(
            policy_hash("abc"),
            "'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='"
        );
    }
}
