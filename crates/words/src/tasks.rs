//! Tasks and entries in words.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_quantity::Kind;

/// What is cut, in a few words.
pub fn task_name(task: TaskKind) -> &'static str {
    tr(match task {
        TaskKind::Facing => "face the blank",
        TaskKind::Bore => "open the bore",
        TaskKind::Clearing => "clear the recess",
        TaskKind::FloorSkim => "skim the floor",
        TaskKind::WallSkim => "skim the walls",
        TaskKind::SlotsThrough => "cut the slots through",
        TaskKind::SlotsBlind => "cut the slots blind",
        TaskKind::OutlineGroove => "groove the outline",
        TaskKind::OutlineFinish => "finish the outline",
    })
}

/// Why there is such a step.
pub fn task_why(task: TaskKind) -> &'static str {
    tr(match task {
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
    })
}

impl Speaker<'_> {
    /// How the cutter gets to depth, with what a path program asks for.
    pub fn entry(&self, entry: &Entry) -> String {
        match *entry {
            Entry::Side => tr("from outside the stock, sideways").to_owned(),
            Entry::Helix {
                hole,
                centre_circle,
                pitch,
                angle,
                centre_feed,
            } => say!(
                "down a helix: hole \u{D8} {hole}, circle of the cutter's middle \u{D8} {circle}, pitch {pitch}, {angle} steep, feed of the \
                 middle {feed}",
                hole = self.length(hole),
                circle = self.length(centre_circle),
                pitch = self.length(pitch),
                angle = self.angle(angle),
                feed = self.feed(centre_feed)
            ),
            Entry::Zigzag { angle, feed } => {
                say!(
                    "to and fro along the slot, sloping down at {angle}, feed {feed}",
                    angle = self.angle(angle),
                    feed = self.feed(feed)
                )
            }
            Entry::Drilled {
                hole,
                drill,
                n,
                feed,
                peck,
            } => say!(
                "into holes \u{D8} {hole} drilled first with cutter {cutter}, at {speed} and {feed}, lifting to clear chips every {peck}",
                hole = self.length(hole),
                cutter = u16::from(drill) + 1,
                speed = self.value(Kind::SpindleSpeed, n.si()),
                feed = self.feed(feed),
                peck = self.length(peck)
            ),
            Entry::Plunge { feed, peck } => {
                say!(
                    "straight down at {feed}, lift to clear chips every {peck}",
                    feed = self.feed(feed),
                    peck = self.length(peck)
                )
            }
        }
    }
}
