//! Causes of trouble: what they are, the one thing to check, and what is done by hand.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::strategy::{Entry, Step};
use thinwright_core::trouble::{Act, Cause};
use thinwright_quantity::Length;

/// A cause.
pub fn cause_name(cause: Cause) -> &'static str {
    tr(match cause {
        Cause::ToolSings => "The cutter sings",
        Cause::WebSings => "The web sings or drums",
        Cause::WebMoves => "The web gives way",
        Cause::ThinChip => "The chip is too thin",
        Cause::BuiltUp => "Metal welds to the edge",
        Cause::Runout => "The cutter runs out",
        Cause::Dull => "The edge is dull",
        Cause::HotEdge => "The edge runs too fast",
        Cause::HeatStays => "The heat stays in the cut",
        Cause::PulledOut => "The cutter creeps out of the collet",
        Cause::CutterBends => "The cutter bends away",
        Cause::RibGives => "The rib beside the slot gives way",
        Cause::Tram => "The spindle is not square to the table",
        Cause::LooseExit => "Nothing stands behind the exit",
        Cause::SteepEntry => "It goes down too steeply",
        Cause::ChipsPack => "Chips pack and are cut again",
        Cause::Overloaded => "The cutter is bent too far",
        Cause::PartMoves => "The part moves in its hold",
        Cause::StepsLost => "An axis stalls or loses steps",
        Cause::Backlash => "The axes have play",
        Cause::AxesLag => "The axes cannot follow the feed",
        Cause::Stalls => "The spindle has too little power",
        Cause::Stress => "Stress in the blank is set free",
        Cause::Clamps => "The clamps bend the part",
        Cause::LooseSkin => "The last skin of waste comes loose",
        Cause::LooseSlug => "A loose piece is caught by the cutter",
    })
}

/// What happens, in a sentence.
pub fn cause_what(cause: Cause) -> &'static str {
    tr(match cause {
        Cause::ToolSings => {
            "Each tooth cuts into the waves that the one before left, and the cutter swings more and more."
        }
        Cause::WebSings => {
            "The web swings by itself, or the teeth push it in step with its own tone."
        }
        Cause::WebMoves => "The cutter pushes or lifts the web, which springs back behind it.",
        Cause::ThinChip => "The edge presses and rubs instead of cutting.",
        Cause::BuiltUp => {
            "A soft alloy sticks to an edge that rubs, gets warm, and has nothing to slide on."
        }
        Cause::Runout => "One flute takes more than its share, the others less.",
        Cause::Dull => "A worn edge presses more than it cuts.",
        Cause::HotEdge => "The edge gets softer than what it cuts.",
        Cause::HeatStays => "The chip is too thin, or stays too long, to carry the heat away.",
        Cause::PulledOut => "The helix pulls, and the collet does not hold.",
        Cause::CutterBends => "The side force bends the cutter, most at its tip.",
        Cause::RibGives => "The rib is pushed aside and springs back when the cutter has passed.",
        Cause::Tram => "One side of the cutter cuts deeper than the other.",
        Cause::LooseExit => "The last of the material bends away instead of being cut.",
        Cause::SteepEntry => "The middle of the cutter cannot cut, and presses.",
        Cause::ChipsPack => "Chips find no way out, jam, weld or are cut again.",
        Cause::Overloaded => {
            "The cut bends the cutter at its root beyond what it bears, at once or turn after turn."
        }
        Cause::PartMoves => "The cut pulls more than the hold keeps.",
        Cause::StepsLost => "Force, acceleration or feed are more than a motor follows.",
        Cause::Backlash => "Where a path turns, an axis moves late.",
        Cause::AxesLag => "The feed is faster than the axes turn round corners.",
        Cause::Stalls => "At this speed the spindle gives less power than the cut takes.",
        Cause::Stress => {
            "The blank was under tension inside, and what is left finds another shape."
        }
        Cause::Clamps => "The part was pressed flat, cut flat, and springs back.",
        Cause::LooseSkin => "A strip that nothing holds any more is flung about by the cutter.",
        Cause::LooseSlug => "A piece that was cut free tilts, jams and flies.",
    })
}

/// What is done by hand.
pub fn act_name(act: Act) -> &'static str {
    tr(match act {
        Act::AirAndDrop => {
            "Air at the cut and a drop of lubricant; a sharp edge, bare or with a coating that aluminium does not stick to."
        }
        Act::NewEdge => "Put in a new edge.",
        Act::CleanCollet => {
            "Clean and dry collet and shank, push the cutter in as far as the collet wants it, tighten to the torque of its maker."
        }
        Act::Reseat => {
            "Clean collet, nut and shank, seat the cutter anew; if that does not do, turn it a quarter in the collet and read again."
        }
        Act::Tram => "Set the spindle square to the table.",
        Act::BackExit => "Put something solid behind the exit, or leave a skin and break it off.",
        Act::GentlerEntry => "Go in down a ramp or a helix of half the slope, or drill first.",
        Act::ClearChips => {
            "An air jet right at the cut; leave the slot and clear it again and again."
        }
        Act::HoldSurer => {
            "Hold it surer: clean the seat, more clamps, over a support, never over a recess."
        }
        Act::SlowerAxes => {
            "Halve the acceleration, slow rapids and plunges; look at drag and couplings."
        }
        Act::MeasureBacklash => {
            "Measure the backlash with an indicator, set it, and let finishing cuts run one way."
        }
        Act::Release => {
            "Rough both sides, release the part, lay shims where it does not touch, clamp lightly and skim."
        }
        Act::HoldSkin => "Cut round the part outline first, or hold the skin.",
        Act::KeepSlug => "Keep hold of the piece with tabs or a skin, or mill it away as chips.",
    })
}

/// The check where no number of the step is needed.
fn check(cause: Cause) -> &'static str {
    tr(match cause {
        Cause::ToolSings | Cause::WebSings => {
            "Tap the cutter, tap the web, and compare with the recorded tone: whose is it?"
        }
        Cause::WebMoves => {
            "Push the web in the middle with a spring scale, an indicator beside it: does the backing touch?"
        }
        Cause::BuiltUp => "Look at the edge through a lens: is metal stuck on it?",
        Cause::Runout => {
            "Turn the cutter by hand against an indicator at its tip, spindle off and unplugged, and note the whole swing."
        }
        Cause::Dull => {
            "Look at the edge through a lens beside a new one: does it shine along its length?"
        }
        Cause::HotEdge => {
            "Look at the edge after a minute, not at the colour of the chips: is it rounded or chipped?"
        }
        Cause::HeatStays => {
            "Feel the chips after the stop: are they hot and loose, or soft and stuck?"
        }
        Cause::PulledOut => {
            "Mark the shank at the collet with a pen, cut, and look whether the mark has moved."
        }
        Cause::CutterBends => "Take the same pass a second time without moving: does it cut again?",
        Cause::RibGives => {
            "Measure rib and slot at the top and at the bottom: is the slot narrow where the rib is long?"
        }
        Cause::Tram => {
            "Look at the floor: where the marks of both sides of the cutter cross, it is square. Or sweep an indicator round."
        }
        Cause::LooseExit => "Look at the back: are the burrs where nothing stood behind?",
        Cause::ChipsPack => "Look into the slot with the spindle off: do chips fill it?",
        Cause::Overloaded => "Look at the break: rough and at once, or with rings from many turns?",
        Cause::PartMoves => {
            "Set an indicator against the part and push by hand: does it move and stay?"
        }
        Cause::StepsLost => "Drive to the datum again: is it off by a constant amount?",
        Cause::Backlash => {
            "Set an indicator against the spindle and step an axis to and fro: how much is lost?"
        }
        Cause::AxesLag => {
            "Cut a circle in the air at half the feed, and again in material: is it rounder?"
        }
        Cause::Stalls => "Listen to, or read, the turns as it enters: do they drop?",
        Cause::Stress => "Release the part and lay it on a flat plate: does it rock?",
        Cause::Clamps => "Loosen one clamp with an indicator beside it: does the part spring?",
        Cause::LooseSkin => "Look before the last pass: what still holds the strip?",
        Cause::LooseSlug => "Look before the cut breaks through: what holds the piece then?",
        // These have a figure in them.
        Cause::ThinChip | Cause::SteepEntry => return "",
    })
}

impl Speaker<'_> {
    /// The one thing to check, to know whether this is the cause.
    pub fn decides(&self, cause: Cause, step: &Step) -> String {
        match cause {
            Cause::ThinChip => {
                let thick = Length::um(self.catalog.numbers.trouble_chip_um);
                say!(
                    "Look at the chips: can they be picked up? Dust is thinner than {thick}; the thickest chip here is {chip}.",
                    thick = self.short(thick),
                    chip = self.short(step.loads.chip.1)
                )
            }
            Cause::SteepEntry => match step.entry {
                Entry::Helix { angle, .. } | Entry::Zigzag { angle, .. } => say!(
                    "Look at the program: does it go down at {angle}, as on the sheet?",
                    angle = self.angle(angle)
                ),
                Entry::Side | Entry::Drilled { .. } | Entry::Plunge { .. } => tr(
                    "Look at the program: does it go in as on the sheet? And does the cutter cut to its centre?",
                )
                .to_owned(),
            },
            _ => check(cause).to_owned(),
        }
    }

    /// What is done by hand, with its figure where it has one.
    pub fn act(&self, act: Act, cutter: Option<Length>) -> String {
        let name = act_name(act);
        let over_d = self.catalog.numbers.trouble_clear_over_d;
        let Some(d) = cutter.filter(|_| act == Act::ClearChips) else {
            return name.to_owned();
        };
        let every = Length::from_si(over_d * d.si());
        say!(
            "{what} Every {depth} to {d} of depth.",
            what = name,
            depth = self.length(every),
            d = self.length(d)
        )
    }
}
