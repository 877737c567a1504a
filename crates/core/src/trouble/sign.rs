//! What a person sees, hears and measures when a cut goes wrong; where in the path, and whether it comes again.

/// Where a sign shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Sound.
    Sound,
    /// Chips.
    Chips,
    /// Floor.
    Floor,
    /// Walls.
    Walls,
    /// Size and shape.
    Size,
    /// Breakage and wear.
    Breakage,
    /// Heat.
    Heat,
    /// Lost position.
    Position,
}

impl Group {
    /// All of them, in the order in which they are asked.
    pub const ALL: [Group; 8] = [
        Group::Sound,
        Group::Chips,
        Group::Floor,
        Group::Walls,
        Group::Size,
        Group::Breakage,
        Group::Heat,
        Group::Position,
    ];
}

macro_rules! signs {
    ($($(#[$doc:meta])* $name:ident $key:literal $group:ident;)*) => {
        /// A sign of trouble.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Sign { $($(#[$doc])* $name,)* }
        const SIGNS: &[(Sign, &str, Group)] = &[$((Sign::$name, $key, Group::$group),)*];
    };
}

signs! {
    /// A pure high squeal, regular slanted marks.
    Squeal "squeal" Sound;
    /// A loud hum in time with turns or teeth.
    Hum "hum" Sound;
    /// The spindle slows or stalls.
    Slows "slows" Sound;
    /// Dust instead of chips.
    Dust "dust" Chips;
    /// Metal stuck on the edges, smeared walls.
    Stuck "stuck" Chips;
    /// Chips packed in the slot or around the cutter.
    Packed "packed" Chips;
    /// Ridges or arcs one way on the floor.
    Ridges "ridges" Floor;
    /// The floor is thick or thin in the middle, or has rings.
    FloorUneven "floor-uneven" Floor;
    /// Walls lean: narrow at the bottom.
    Taper "taper" Walls;
    /// Burrs on the side where the cutter leaves.
    Burrs "burrs" Walls;
    /// The slot gets deeper along the path.
    Deepening "deepening" Size;
    /// Width or wall came out off its size.
    OffSize "off-size" Size;
    /// Circles out of round, corners rounded.
    Round "round" Size;
    /// Flat in the clamps, bowed when released.
    Bowed "bowed" Size;
    /// The cutter broke as it went in.
    BrokeEntering "broke-entering" Breakage;
    /// The cutter broke deep in a slot.
    BrokeDeep "broke-deep" Breakage;
    /// The cutter broke at the shank, without a sound before.
    BrokeShank "broke-shank" Breakage;
    /// One flute shiny, the others dull.
    Shiny "shiny" Breakage;
    /// The edge is worn soon.
    Worn "worn" Breakage;
    /// Something was thrown.
    Thrown "thrown" Breakage;
    /// A thin strip of waste flaps into the cutter.
    Flaps "flaps" Breakage;
    /// Blue chips.
    Blue "blue" Heat;
    /// Plastic melts, white edge, strings.
    Melts "melts" Heat;
    /// Everything is off by a constant amount from some point on.
    Shifted "shifted" Position;
    /// The part sits loose, or elsewhere than before.
    Loose "loose" Position;
}

impl Sign {
    /// Its key in the table.
    pub fn key(self) -> &'static str {
        SIGNS[self as usize].1
    }

    /// Where it shows.
    pub fn group(self) -> Group {
        SIGNS[self as usize].2
    }

    /// Every sign, in the order in which they are asked.
    pub fn all() -> impl Iterator<Item = Sign> {
        SIGNS.iter().map(|s| s.0)
    }

    /// The sign of a key.
    pub fn by_key(key: &str) -> Option<Sign> {
        SIGNS.iter().find(|s| s.1 == key).map(|s| s.0)
    }

    /// Something is broken or loose: first of all it is made safe.
    pub fn hurts(self) -> bool {
        matches!(
            self,
            Sign::BrokeEntering
                | Sign::BrokeDeep
                | Sign::BrokeShank
                | Sign::Thrown
                | Sign::Flaps
                | Sign::Loose
        )
    }
}

/// Where in the path it was.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Spot {
    /// Where the cutter goes in.
    Entering,
    /// In the first passage, at full width.
    Opening,
    /// On straight runs.
    Straight,
    /// In corners.
    Corner,
    /// Deep in a slot or recess.
    Deep,
    /// In the middle of the web.
    Middle,
    /// Where it breaks through, or near the end.
    Through,
}

impl Spot {
    /// All of them.
    pub const ALL: [Spot; 7] = [
        Spot::Entering,
        Spot::Opening,
        Spot::Straight,
        Spot::Corner,
        Spot::Deep,
        Spot::Middle,
        Spot::Through,
    ];
}

/// Whether it comes again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Repeats {
    /// Every time, at the same place.
    Same,
    /// Now here, now there.
    Elsewhere,
    /// It happened once.
    Once,
}

impl Repeats {
    /// All of them.
    pub const ALL: [Repeats; 3] = [Repeats::Same, Repeats::Elsewhere, Repeats::Once];
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn signs_are_found_by_their_keys_and_every_group_has_one() {
        assert!(Sign::all().all(|sign| Sign::by_key(sign.key()) == Some(sign)));
        assert_eq!(Sign::by_key("nothing"), None);
        let asked = |group: Group| Sign::all().any(|sign| sign.group() == group);
        assert!(Group::ALL.into_iter().all(asked));
    }
}
