//! How much a visitor's browser has to fetch.

use flate2::{Compression, write::GzEncoder};
use std::io::Write as _;

/// Prints the size of a file, as it is and as servers usually send it.
pub(crate) fn print(what: &str, content: &[u8]) {
    println!(
        "{what}: {} bytes, gzip {} bytes",
        content.len(),
        gzip(content)
    );
}

fn gzip(content: &[u8]) -> usize {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder
        .write_all(content)
        .and_then(|()| encoder.finish())
        .map_or(content.len(), |packed| packed.len())
}
