//! How much a visitor's browser fetches.

use flate2::Compression;
use flate2::write::GzEncoder;
use std::io::Write as _;
use std::path::Path;

/// Brotli's greatest quality, and its usual window, as servers pack files ahead.
const BROTLI: (u32, u32) = (11, 22);
const BROTLI_BUFFER: usize = 1 << 16;

/// A file of the page: as it is, by gzip, by brotli; bytes.
pub(crate) struct Size {
    pub(crate) name: String,
    pub(crate) raw: usize,
    pub(crate) gzip: usize,
    pub(crate) brotli: usize,
}

/// Sizes of the program, its glue, and all that the page is, the largest first.
pub(crate) fn of(dist: &Path) -> std::io::Result<Vec<Size>> {
    let mut sizes = Vec::new();
    for file in std::fs::read_dir(dist)? {
        let path = file?.path();
        let content = std::fs::read(&path)?;
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        sizes.push(Size {
            name: without_fingerprint(&name),
            raw: content.len(),
            gzip: gzip(&content)?,
            brotli: brotli(&content)?,
        });
    }
    sizes.sort_by(|a, b| (b.raw, &b.name).cmp(&(a.raw, &a.name)));
    let sum = |of: fn(&Size) -> usize| sizes.iter().map(of).sum();
    sizes.push(Size {
        name: "all".to_owned(),
        raw: sum(|s| s.raw),
        gzip: sum(|s| s.gzip),
        brotli: sum(|s| s.brotli),
    });
    Ok(sizes)
}

/// The name that stays when the content changes.
fn without_fingerprint(name: &str) -> String {
    let Some((stem, ending)) = name.rsplit_once('.') else {
        return name.to_owned();
    };
    match stem.rsplit_once('-') {
        Some((stem, mark)) if mark.len() == 16 && mark.chars().all(|c| c.is_ascii_hexdigit()) => {
            format!("{stem}.{ending}")
        }
        _ => name.to_owned(),
    }
}

fn gzip(content: &[u8]) -> std::io::Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(content)?;
    Ok(encoder.finish()?.len())
}

fn brotli(content: &[u8]) -> std::io::Result<usize> {
    let mut packed = Vec::new();
    let (quality, window) = BROTLI;
    let mut encoder = brotli::CompressorWriter::new(&mut packed, BROTLI_BUFFER, quality, window);
    encoder.write_all(content)?;
    drop(encoder);
    Ok(packed.len())
}
