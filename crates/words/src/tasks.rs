//! Tasks and entries in words.

use crate::Speaker;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_quantity::Kind;

/// What is cut, in a few words.
pub fn task_name(task: TaskKind) -> &'static str {
    match task {
        TaskKind::Facing => "face the blank",
        TaskKind::Bore => "open the bore",
        TaskKind::Clearing => "clear the recess",
        TaskKind::FloorSkim => "skim the floor",
        TaskKind::WallSkim => "skim the walls",
        TaskKind::SlotsThrough => "cut the slots through",
        TaskKind::SlotsBlind => "cut the slots blind",
        TaskKind::OutlineGroove => "groove the outline",
        TaskKind::OutlineFinish => "finish the outline",
    }
}

/// Why there is such a step.
pub fn task_why(task: TaskKind) -> &'static str {
    match task {
        TaskKind::Facing => "a flat face to measure every depth from",
        TaskKind::Bore => "a way in for the cutter, and a datum for the other side",
        TaskKind::Clearing => "the bulk of the recess; floor and walls keep their allowance",
        TaskKind::FloorSkim => {
            "takes the floor allowance in one light level, so that little force bends the web"
        }
        TaskKind::WallSkim => "takes the wall allowance with the cutter hardly loaded",
        TaskKind::SlotsThrough => "through the web; chips can fall or be blown out below",
        TaskKind::SlotsBlind => {
            "into stock that the other recess will remove: the web is still solid underneath"
        }
        TaskKind::OutlineGroove => {
            "past the plane where the part is turned over; the frame still holds it"
        }
        TaskKind::OutlineFinish => "last of all: tabs keep hold of the part until it is taken out",
    }
}

impl Speaker<'_> {
    /// How the cutter gets to depth, with what a path program asks for.
    pub fn entry(&self, entry: &Entry) -> String {
        match *entry {
            Entry::Side => "from outside the stock, sideways".to_owned(),
            Entry::Helix {
                hole,
                centre_circle,
                pitch,
                angle,
                centre_feed,
            } => format!(
                "down a helix: hole \u{D8} {}, circle of the cutter's middle \u{D8} {}, pitch {}, {} steep, feed of the \
                 middle {}",
                self.length(hole),
                self.length(centre_circle),
                self.length(pitch),
                self.angle(angle),
                self.feed(centre_feed),
            ),
            Entry::Zigzag { angle, feed } => {
                format!(
                    "to and fro along the slot, sloping down at {}, feed {}",
                    self.angle(angle),
                    self.feed(feed)
                )
            }
            Entry::Drilled {
                hole,
                drill,
                n,
                feed,
                peck,
            } => format!(
                "into holes \u{D8} {} drilled first with cutter {}, at {} and {}, lifting to clear chips every {}",
                self.length(hole),
                u16::from(drill) + 1,
                self.value(Kind::SpindleSpeed, n.si()),
                self.feed(feed),
                self.length(peck),
            ),
            Entry::Plunge { feed, peck } => {
                format!(
                    "straight down at {}, lift to clear chips every {}",
                    self.feed(feed),
                    self.length(peck)
                )
            }
        }
    }
}
