//! Lines packed small: raw deflate (RFC 1951) against a preset text that packer and unpacker both know.
//!
//! The preset text belongs to the version of the link and never changes: links on paper depend on it. A field that is
//! newer than the text is spelt out, at the price of some letters.

use super::LinkError;
use miniz_oxide::deflate::core::{
    CompressorOxide, TDEFLFlush, compress_to_output, create_comp_flags_from_zip_params,
};
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress, inflate_flags};

/// What both sides know: keys and common texts, what is usual last.
pub(super) const PRESET: &str = include_str!("dictionary-1.txt");
/// Greatest effort, which costs nothing on so little.
const LEVEL: i32 = 10;
/// Raw deflate, without a frame: a negative window, as its library has it.
const RAW: i32 = -15;
/// Ways to choose codes: made for the text, or the standard's fixed ones, which need no table.
const WAYS: [i32; 2] = [0, 4];

/// Packs bytes: the shortest of all ways.
pub(super) fn pack(bytes: &[u8]) -> Vec<u8> {
    let all = WAYS.into_iter().map(|way| pack_in(way, bytes));
    all.min_by_key(Vec::len).unwrap_or_default()
}

fn pack_in(way: i32, bytes: &[u8]) -> Vec<u8> {
    let flags = create_comp_flags_from_zip_params(LEVEL, RAW, way);
    let mut packer = CompressorOxide::new(flags);
    // What comes of the preset text ends on a whole byte and is thrown away; the packer goes on to refer to it.
    compress_to_output(&mut packer, PRESET.as_bytes(), TDEFLFlush::Sync, |_| true);
    let mut out = Vec::new();
    compress_to_output(&mut packer, bytes, TDEFLFlush::Finish, |piece| {
        out.extend_from_slice(piece);
        true
    });
    out
}

/// Unpacks bytes to `most` at most, however much they claim to be.
pub(super) fn unpack(packed: &[u8], most: usize) -> Result<Vec<u8>, LinkError> {
    let start = PRESET.len();
    let mut room = vec![0; start + most];
    room[..start].copy_from_slice(PRESET.as_bytes());
    let flags = inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
    let mut unpacker = DecompressorOxide::new();
    let (status, read, written) = decompress(&mut unpacker, packed, &mut room, start, flags);
    match status {
        TINFLStatus::Done if read == packed.len() => {
            room.truncate(start + written);
            room.drain(..start);
            Ok(room)
        }
        TINFLStatus::HasMoreOutput => Err(LinkError::TooMuch {
            bytes: most + 1,
            most,
        }),
        _ => Err(LinkError::Damaged),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::digest::fnv1a;

    #[test]
    fn bytes_come_back() {
        let long = "part.web\te\t4 mm\n".repeat(3000);
        let noise: Vec<u8> = (0..5000_u32)
            .flat_map(|i| fnv1a(&i.to_le_bytes()).to_le_bytes())
            .collect();
        for bytes in [b"".as_slice(), b"4", long.as_bytes(), &noise] {
            let packed = pack(bytes);
            assert_eq!(unpack(&packed, 64_000).as_deref(), Ok(bytes));
            assert!(unpack(&packed[..packed.len() - 1], 64_000).is_err());
        }
        assert!(pack(long.as_bytes()).len() < 500);
    }

    #[test]
    fn a_bomb_is_refused_in_bounded_room() {
        let packed = pack(&vec![b'x'; 10_000_000]);
        assert!(packed.len() < 12_000, "{}", packed.len());
        let (bytes, most) = (64_001, 64_000);
        assert_eq!(
            unpack(&packed, most),
            Err(LinkError::TooMuch { bytes, most })
        );
        // What fits to the byte is taken.
        let exact = vec![b'x'; 64_000];
        assert_eq!(unpack(&pack(&exact), 64_000), Ok(exact));
    }

    #[test]
    fn what_stands_behind_the_end_is_damage() {
        let mut packed = pack(b"4");
        packed.push(0);
        assert_eq!(unpack(&packed, 10), Err(LinkError::Damaged));
    }
}
