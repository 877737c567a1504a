//! Hatching over a line: what lies above it and below the top of the field.

/// A place on paper, and a piece of hatching.
type Place = (f64, f64);
pub(super) type Piece = (Place, Place);

/// Pieces shorter than this are none.
const HAIR: f64 = 1.0e-6;

/// Lines at 45 degrees, rising to the right, `pitch` apart, over a line from left to right; paper counts down.
pub(super) fn above(limit: &[Place], top: f64, pitch: f64) -> Vec<Piece> {
    let mut out = Vec::new();
    let (Some(first), Some(last)) = (limit.first(), limit.last()) else {
        return out;
    };
    let foot = limit.iter().map(|p| p.1).fold(top, f64::max);
    // On a line x + y is the same everywhere.
    let mut c = libm::ceil((first.0 + top) / pitch) * pitch;
    while c < last.0 + foot {
        one(limit, top, c, &mut out);
        c += pitch;
    }
    out
}

/// The pieces of one line: from each step of the limit what lies above it, joined where they touch.
fn one(limit: &[Place], top: f64, c: f64, out: &mut Vec<Piece>) {
    let mut run: Option<(f64, f64)> = None;
    for pair in limit.windows(2) {
        // Nothing lies over the top of the field.
        let inside = within(pair[0], pair[1], c)
            .map(|(a, b)| (a, b.min(c - top)))
            .filter(|r| r.1 - r.0 > HAIR);
        match (run, inside) {
            (Some((a, b)), Some((from, to))) if from - b < HAIR => run = Some((a, to)),
            (old, new) => {
                out.extend(old.map(|r| piece(r, c)));
                run = new;
            }
        }
    }
    out.extend(run.map(|r| piece(r, c)));
}

fn piece((a, b): (f64, f64), c: f64) -> Piece {
    ((a, c - a), (b, c - b))
}

/// Where along one step of the limit the line lies above it.
fn within(a: Place, b: Place, c: f64) -> Option<(f64, f64)> {
    // How far the line is above the limit at both ends.
    let (at_a, at_b) = (a.1 - (c - a.0), b.1 - (c - b.0));
    let crossing = || a.0 + (b.0 - a.0) * at_a / (at_a - at_b);
    match (at_a > 0.0, at_b > 0.0) {
        (true, true) => Some((a.0, b.0)),
        (true, false) => Some((a.0, crossing())),
        (false, true) => Some((crossing(), b.0)),
        (false, false) => None,
    }
}
