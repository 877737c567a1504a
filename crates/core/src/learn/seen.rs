//! What was seen of a step, as the numbers that it is judged by, and how likely it is in a world.

use super::world::World;
use thinwright_catalog::Numbers;

/// What was seen of one step. SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// The world in which the numbers below were worked out.
    pub at: World,
    /// Compliance of the cutter's tip in its collet, m/N.
    pub tip: f64,
    /// Whether it sang.
    pub song: Option<Song>,
    /// By how much something gave.
    pub give: Option<Give>,
    /// Whether the cutter broke.
    pub edge: Option<Edge>,
    /// What was measured of the force.
    pub force: Option<Force>,
}

/// Whether a step sang.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Song {
    /// It did.
    pub sang: bool,
    /// Step-down, m.
    pub depth: f64,
    /// Depth at which the cutter's tip is as likely to sing as not, m.
    pub limit: f64,
    /// Damping ratio of the tip in the world of the numbers.
    pub damping: f64,
    /// Chance that something else than the tip sang: the web, a rib.
    pub other: f64,
    /// Whether a tone is known, so that the limit is that of this very speed.
    pub told: bool,
}

/// By how much cutter and machine gave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Give {
    /// What was measured, m.
    pub give: f64,
    /// Force that made it, N.
    pub force: f64,
    /// What the instrument leaves open, as a share.
    pub share: f64,
}

/// Whether the cutter broke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// It did.
    pub broke: bool,
    /// Bending stress in the cutter, Pa.
    pub stress: f64,
    /// Rupture strength of what it is made of, Pa.
    pub rupture: f64,
}

/// What was measured of the force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Force {
    /// Force over that of the world of the numbers.
    pub factor: f64,
    /// What the instrument leaves open, as a share.
    pub share: f64,
}

/// Names of the numbers, as files have them.
const NAMES: [&str; 18] = [
    "at-stiffness",
    "at-kc",
    "at-damping",
    "tip",
    "song-sang",
    "song-depth",
    "song-limit",
    "song-damping",
    "song-other",
    "song-told",
    "give",
    "give-force",
    "give-share",
    "edge-broke",
    "edge-stress",
    "edge-rupture",
    "force-factor",
    "force-share",
];

impl Seen {
    /// As names and numbers, for a file.
    pub fn numbers(&self) -> Vec<(String, f64)> {
        let flag = |so: bool| if so { 1.0 } else { 0.0 };
        let values: [Option<f64>; 18] = [
            Some(self.at.stiffness),
            Some(self.at.kc),
            Some(self.at.damping),
            Some(self.tip),
            self.song.map(|s| flag(s.sang)),
            self.song.map(|s| s.depth),
            self.song.map(|s| s.limit),
            self.song.map(|s| s.damping),
            self.song.map(|s| s.other),
            self.song.map(|s| flag(s.told)),
            self.give.map(|g| g.give),
            self.give.map(|g| g.force),
            self.give.map(|g| g.share),
            self.edge.map(|e| flag(e.broke)),
            self.edge.map(|e| e.stress),
            self.edge.map(|e| e.rupture),
            self.force.map(|f| f.factor),
            self.force.map(|f| f.share),
        ];
        let all = NAMES.iter().zip(values);
        all.filter_map(|(name, value)| Some(((*name).to_owned(), value?)))
            .collect()
    }

    /// From names and numbers. What is not whole, or cannot be, is left out; nothing where no world is told.
    pub fn from_numbers(numbers: &[(String, f64)]) -> Option<Seen> {
        let get = |name: &str| numbers.iter().find(|(n, _)| n == name).map(|(_, v)| *v);
        let above = |name: &str| get(name).filter(|v| v.is_finite() && *v > 0.0);
        let share = |name: &str| get(name).filter(|v| (0.0..=1.0).contains(v));
        let at = World {
            stiffness: above("at-stiffness")?,
            kc: above("at-kc")?,
            damping: above("at-damping")?,
            reach: 1.0,
        };
        let song = || {
            Some(Song {
                sang: share("song-sang")? > 0.5,
                depth: above("song-depth")?,
                limit: above("song-limit")?,
                damping: above("song-damping")?,
                other: share("song-other")?,
                told: share("song-told")? > 0.5,
            })
        };
        let give = || {
            Some(Give {
                give: above("give")?,
                force: above("give-force")?,
                share: share("give-share")?,
            })
        };
        let edge = || {
            Some(Edge {
                broke: share("edge-broke")? > 0.5,
                stress: above("edge-stress")?,
                rupture: above("edge-rupture")?,
            })
        };
        let force = || {
            Some(Force {
                factor: above("force-factor")?,
                share: share("force-share")?,
            })
        };
        Some(Seen {
            at,
            tip: get("tip").filter(|v| v.is_finite() && *v >= 0.0)?,
            song: song(),
            give: give(),
            edge: edge(),
            force: force(),
        })
    }

    /// Whether anything was seen that can teach.
    pub fn says_something(&self) -> bool {
        self.song.is_some() || self.give.is_some() || self.edge.is_some() || self.force.is_some()
    }

    /// How likely this is in a world, at most 1.
    ///
    /// Song and breakage: a logistic curve in the logarithm of depth over limit, and of stress over strength. Give and
    /// force: a bell in the logarithm. Each leaves a small chance that something else was at work, or noted wrong. Where no
    /// tone is known, the limit is worked out by a model that leaves much out (the flank that rubs, the lobes): how far it is
    /// off is part of the world, the same for all such steps, so that many of them do not seem to prove much.
    /// Units: SI. Source: derived; the spreads are rows of the numbers table.
    pub fn likelihood(&self, world: &World, numbers: &Numbers) -> f64 {
        let slip = numbers.learn_slip;
        let told = |p: f64, so: bool| slip + (1.0 - 2.0 * slip) * if so { p } else { 1.0 - p };
        let bell = |off: f64, spread: f64| {
            let z = off / spread.max(f64::MIN_POSITIVE);
            slip + (1.0 - slip) * libm::exp(-0.5 * z * z)
        };
        let force = world.kc / self.at.kc;
        let mut likely = 1.0;
        if let Some(song) = &self.song {
            let limit = song.limit * self.depth_factor(world, song.damping);
            let (limit, spread) = match song.told {
                true => (limit, numbers.learn_song_spread),
                false => (limit * world.reach, numbers.learn_untold_spread),
            };
            let tip = logistic(song.depth / limit, spread);
            likely *= told(1.0 - (1.0 - tip) * (1.0 - song.other), song.sang);
        }
        if let Some(give) = &self.give {
            let there = give.force * force * (self.tip + 1.0 / world.stiffness);
            let spread = libm::hypot(numbers.learn_give_spread, give.share);
            likely *= bell(libm::log(give.give / there), spread);
        }
        if let Some(edge) = &self.edge {
            let p = logistic(
                edge.stress * force / edge.rupture,
                numbers.learn_break_spread,
            );
            likely *= told(p, edge.broke);
        }
        if let Some(measured) = &self.force {
            let spread = libm::hypot(numbers.learn_force_spread, measured.share);
            likely *= bell(libm::log(measured.factor / force), spread);
        }
        likely
    }

    /// How much deeper it stays quiet in a world than in that of the numbers: with the stiffness at the tip and the
    /// damping, against the force.
    ///
    /// Why: of one vibration that is the law of the depth that is quiet at any speed; at one speed, where a tone is known,
    /// the damping has a little less to say between the lobes' foot and their top.
    fn depth_factor(&self, world: &World, damping: f64) -> f64 {
        let chain = |k: f64| self.tip + 1.0 / k;
        let damped = |zeta: f64| zeta * (1.0 + zeta);
        let zeta = damping * world.damping / self.at.damping;
        (damped(zeta) / damped(damping))
            * (chain(self.at.stiffness) / chain(world.stiffness))
            * (self.at.kc / world.kc)
    }
}

/// Chance that what stands at this ratio to its limit is beyond it: a half at the limit.
pub(super) fn logistic(ratio: f64, spread: f64) -> f64 {
    1.0 / (1.0 + libm::exp(-libm::log(ratio) / spread))
}
