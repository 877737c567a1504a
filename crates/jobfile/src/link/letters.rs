//! Bytes as letters: two bytes are three letters out of 41, all of which a QR code holds in its dense alphanumeric mode
//! (ISO/IEC 18004) and an address allows behind `#` (RFC 3986). Blank and `%` are in the one and not in the other.

use super::LinkError;

/// The letters, in the order of their worth.
const LETTERS: &[u8; 41] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ+-./:";
const BASE: u32 = 41;

/// The letter of a worth below [`BASE`].
fn letter(worth: u32) -> char {
    let at = usize::try_from(worth).unwrap_or(0);
    LETTERS.get(at).map_or('0', |l| char::from(*l))
}

/// Puts bytes as letters: three for two bytes, two for one that is left over.
pub(super) fn put(bytes: &[u8], out: &mut String) {
    for pair in bytes.chunks(2) {
        let mut value = pair.iter().fold(0, |v, b| v * 256 + u32::from(*b));
        for _ in 0..=pair.len() {
            out.push(letter(value % BASE));
            value /= BASE;
        }
    }
}

/// The bytes of letters.
pub(super) fn take(letters: &[u8]) -> Result<Vec<u8>, LinkError> {
    let mut bytes = Vec::with_capacity(letters.len() / 3 * 2 + 1);
    for (number, group) in letters.chunks(3).enumerate() {
        let mut value = 0;
        for (at, letter) in group.iter().enumerate().rev() {
            let worth = LETTERS.iter().position(|l| l == letter);
            let worth = worth.and_then(|w| u32::try_from(w).ok());
            value = value * BASE
                + worth.ok_or(LinkError::Letter {
                    // The version's letter is the first.
                    at: number * 3 + at + 2,
                    found: char::from(*letter),
                })?;
        }
        let [.., high, low] = value.to_be_bytes();
        match group.len() {
            3 if value <= 0xFFFF => bytes.extend([high, low]),
            2 if value <= 0xFF => bytes.push(low),
            1 => return Err(LinkError::CutOff),
            _ => return Err(LinkError::Damaged),
        }
    }
    Ok(bytes)
}

/// A fragment as it was written: `%2B` is `+` again, and blanks and line ends that a mailer put in are gone. What is not
/// ASCII becomes `?`, which is no letter.
pub(super) fn plain(fragment: &str) -> String {
    let mut out = String::with_capacity(fragment.len());
    let mut rest = fragment.as_bytes().iter();
    while let Some(byte) = rest.next() {
        let byte = match *byte {
            b'%' => match escaped(rest.as_slice()) {
                Some(meant) => {
                    rest.nth(1);
                    meant
                }
                None => *byte,
            },
            other => other,
        };
        if !byte.is_ascii_whitespace() {
            out.push(if byte.is_ascii_graphic() {
                char::from(byte)
            } else {
                '?'
            });
        }
    }
    out
}

/// The byte of the two hexadecimal digits behind a `%`.
fn escaped(digits: &[u8]) -> Option<u8> {
    let digit = |at: usize| char::from(*digits.get(at)?).to_digit(16);
    u8::try_from(digit(0)? * 16 + digit(1)?).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_come_back() {
        for length in 0..6 {
            for value in [0_u8, 1, 40, 41, 254, 255] {
                let bytes = vec![value; length];
                let mut text = String::new();
                put(&bytes, &mut text);
                assert_eq!(text.len(), length / 2 * 3 + length % 2 * 2);
                assert_eq!(take(text.as_bytes()), Ok(bytes));
            }
        }
        let mut all = String::new();
        let bytes: Vec<u8> = (0..=255).collect();
        put(&bytes, &mut all);
        assert_eq!(take(all.as_bytes()), Ok(bytes));
    }

    #[test]
    fn letters_that_are_none_are_named() {
        let found = 'a';
        assert_eq!(take(b"00a"), Err(LinkError::Letter { at: 4, found }));
        assert_eq!(take(b"0000"), Err(LinkError::CutOff));
        assert_eq!(take(b":::"), Err(LinkError::Damaged));
        assert_eq!(take(b"::"), Err(LinkError::Damaged));
    }

    #[test]
    fn what_was_put_in_on_the_way_is_seen_through() {
        assert_eq!(plain("j=1A%2bB%3A\r\n C"), "j=1A+B:C");
        assert_eq!(plain("%"), "%");
        assert_eq!(plain("%4"), "%4");
        assert_eq!(plain("%zz\u{E9}"), "%zz??");
    }
}
