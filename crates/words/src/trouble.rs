//! When it goes wrong: what is asked, what may be the cause, what speaks for it and against it, and what to change first.

mod causes;
mod changes;
mod clues;

pub use causes::{act_name, cause_name, cause_what};
pub use changes::{Row, move_name};

use crate::language::tr;
use crate::say;
use thinwright_core::trouble::{Group, Repeats, Sign, Spot};

macro_rules! texts {
    ($($(#[$doc:meta])* $name:ident: $text:literal;)*) => {
        $($(#[$doc])* pub fn $name() -> &'static str {
            tr($text)
        })*
    };
}

texts! {
    /// Name of the panel.
    name: "When it goes wrong";
    /// What comes before everything else.
    stop_first: "Stop the spindle, and wait until it stands still, before you look, touch or measure.";
    /// Where something broke or came loose.
    make_safe: "Something broke or came loose: make it safe first. Stop everything, keep out of the way it flew, pick up pieces \
        and chips with a hook or a brush, and look at cutter, collet, hold and guard before the next start.";
    /// Which step.
    which_step: "Step";
    /// What is asked first.
    signs: "What was seen, heard or measured";
    /// Where.
    spot: "Where in the path";
    /// Whether it comes again.
    repeats: "Does it come again?";
    /// A tone.
    tone: "A tone that is no multiple of the turns, if one was heard, Hz";
    /// What was typed is no tone.
    no_tone: "This is no frequency: type it in Hz, like 1850.";
    /// Nothing chosen.
    not_said: "not said";
    /// What to do while nothing is told.
    tell: "Tick what was noticed: the causes are ranked by the limits of this step.";
    /// Heading of the causes.
    causes: "Likely causes";
    /// How they are ranked.
    ranked: "Ranked by how well the signs fit, and by how plausible it is that a limit behind the cause was exceeded in this step, \
        with all that is not known for sure.";
    /// What fits.
    speaks_for: "For it";
    /// What does not.
    speaks_against: "Against it";
    /// What decides.
    decides: "To decide";
    /// What to do by hand.
    by_hand: "First, by hand";
    /// The change of numbers.
    first_change: "First change of the numbers";
    /// The change of numbers after something by hand.
    then_change: "If that does not help, change the numbers";
    /// No change of numbers helps.
    no_change: "No change of the numbers of this step eases it.";
    /// The others.
    aside: "Worked out and set aside";
    /// While it is worked out.
    working_out: "Working the change out \u{2026}";
    /// The strategy is not checked yet.
    waits: "The strategy is still being worked out: what follows from it comes then.";
    /// Takes a change over.
    try_it: "Try this change";
    /// What was done by hand.
    done_by_hand: "This is done";
    /// One at a time.
    one_change: "One change at a time: make this one, cut again, and say what happened before the next.";
    /// After a change.
    what_happened: "What happened after this change?";
    /// The answers.
    gone: "It is gone";
    /// Less.
    better: "It is better";
    /// The same, or worse.
    no_better: "It is no better";
    /// Back to what was.
    take_back: "Take the change back";
    /// What was tried.
    tried: "Tried so far";
    /// It is gone: what now.
    found: "That was it. Keep the change, and note what worked.";
    /// Begin anew.
    anew: "Begin anew";
    /// The table's column of names.
    number: "number";
    /// Before.
    now: "now";
    /// After.
    then: "then";
}

/// Number and name of a step.
pub fn numbered(number: u32, step: &str) -> String {
    say!("{number}. {step}", number, step)
}

/// A way to the answer that changes with what was done.
pub fn fill_in(place: &str) -> String {
    say!("Change the answer: {place}", place)
}

/// What was done against a cause.
pub fn against(cause: &str, done: &str) -> String {
    say!("{cause}: {done}", cause, done)
}

/// What came of it.
pub fn came_of(done: &str, came: &str) -> String {
    say!("{done} ({came})", done, came)
}

/// Where a sign shows.
pub fn sign_group(group: Group) -> &'static str {
    tr(match group {
        Group::Sound => "Sound",
        Group::Chips => "Chips",
        Group::Floor => "Floor",
        Group::Walls => "Walls",
        Group::Size => "Size and shape",
        Group::Breakage => "Breakage and wear",
        Group::Heat => "Heat",
        Group::Position => "Position",
    })
}

/// A sign.
pub fn sign_name(sign: Sign) -> &'static str {
    tr(match sign {
        Sign::Squeal => "A pure high squeal, regular slanting marks",
        Sign::Hum => "A loud hum in time with the turns or the teeth",
        Sign::Slows => "The spindle slows or stalls",
        Sign::Dust => "Dust instead of chips",
        Sign::Stuck => "Metal stuck on the edges, smeared walls",
        Sign::Packed => "Chips packed in the slot or round the cutter",
        Sign::Ridges => "Ridges or arcs one way on the floor",
        Sign::FloorUneven => "Floor thick or thin in the middle, or rings on it",
        Sign::Taper => "Walls lean: narrow at the bottom",
        Sign::Burrs => "Burrs where the cutter leaves",
        Sign::Deepening => "The cut gets deeper along the path",
        Sign::OffSize => "A width or a wall came out off its size",
        Sign::Round => "Circles out of round, corners rounded",
        Sign::Bowed => "Flat in the clamps, bowed when released",
        Sign::BrokeEntering => "The cutter broke as it went in",
        Sign::BrokeDeep => "The cutter broke deep in a slot or recess",
        Sign::BrokeShank => "The cutter broke at the shank, without a sound before",
        Sign::Shiny => "One flute shiny, the others dull",
        Sign::Worn => "The edge is worn after a short time",
        Sign::Thrown => "A loose piece was pinched or thrown",
        Sign::Flaps => "A thin strip of waste flaps into the cutter",
        Sign::Blue => "Blue chips",
        Sign::Melts => "Plastic melts, white edge, strings",
        Sign::Shifted => "Everything is off by a constant amount from some point on",
        Sign::Loose => "The part sits loose, or elsewhere than before",
    })
}

/// Where in the path.
pub fn spot_name(spot: Spot) -> &'static str {
    tr(match spot {
        Spot::Entering => "where the cutter goes in",
        Spot::Opening => "in the first passage, at full width",
        Spot::Straight => "on straight runs",
        Spot::Corner => "in corners",
        Spot::Deep => "deep in a slot or recess",
        Spot::Middle => "in the middle of the web",
        Spot::Through => "where it breaks through, or near the end",
    })
}

/// Whether it comes again.
pub fn repeats_name(repeats: Repeats) -> &'static str {
    tr(match repeats {
        Repeats::Same => "yes, at the same place",
        Repeats::Elsewhere => "yes, now here, now there",
        Repeats::Once => "it happened once",
    })
}
