//! A place in what is read at the machine, and how the page's address says it: `#at-machine=3.numbers.1` is the first page of
//! the numbers of step 3. So a page that is loaded again comes back to where it was.

/// What stands before a place in the address.
const NAME: &str = "#at-machine";
/// More pages than anything has: what is typed into the address stays a small number.
const MOST: usize = 10_000;

/// What is read of a step, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Part {
    /// Before everything: the cautions of the whole job.
    Cautions,
    /// Checks after turning the part over.
    Turned,
    /// How a setup is clamped and where its zero is.
    Setup,
    /// Checks before the first start of a setup.
    Start,
    /// What comes before a step.
    Before,
    /// The numbers of a step.
    Numbers,
    /// What else is set.
    More,
    /// What is measured after a step.
    After,
}

const PARTS: [(Part, &str); 8] = [
    (Part::Cautions, "cautions"),
    (Part::Turned, "turned"),
    (Part::Setup, "setup"),
    (Part::Start, "start"),
    (Part::Before, "before"),
    (Part::Numbers, "numbers"),
    (Part::More, "more"),
    (Part::After, "after"),
];

/// A place: which page of which part of which step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Spot {
    /// The step, counted from 0 over all setups.
    pub(crate) step: usize,
    pub(crate) part: Part,
    /// Counted from 0.
    pub(crate) page: usize,
}

impl Spot {
    /// Where reading begins.
    pub(crate) const FIRST: Spot = Spot {
        step: 0,
        part: Part::Cautions,
        page: 0,
    };

    /// What comes before the step of this number.
    pub(crate) fn before(number: u32) -> Spot {
        let number = usize::try_from(number).unwrap_or(MOST);
        Spot {
            step: number.clamp(1, MOST) - 1,
            part: Part::Before,
            page: 0,
        }
    }

    /// As the end of an address.
    pub(crate) fn fragment(self) -> String {
        let key = PARTS.iter().find(|(part, _)| *part == self.part);
        let key = key.map_or("", |(_, key)| key);
        format!("{NAME}={}.{key}.{}", self.step + 1, self.page + 1)
    }

    /// The place that the end of an address names; nothing where it names something else. What is missing or cannot be read
    /// is the first there is.
    pub(crate) fn read(fragment: &str) -> Option<Spot> {
        let rest = fragment.strip_prefix(NAME)?;
        if rest.is_empty() {
            return Some(Spot::FIRST);
        }
        let mut words = rest.strip_prefix('=')?.split('.');
        let count = |word: Option<&str>| {
            let number = word.and_then(|w| w.parse::<usize>().ok()).unwrap_or(1);
            number.clamp(1, MOST) - 1
        };
        let step = count(words.next());
        let key = words.next().unwrap_or_default();
        let part = PARTS.iter().find(|(_, k)| *k == key);
        let first = if step == 0 {
            Part::Cautions
        } else {
            Part::Before
        };
        Some(Spot {
            step,
            part: part.map_or(first, |(part, _)| *part),
            page: count(words.next()),
        })
    }
}

/// Where a place is among those that there are: itself, or the nearest before it in the same step, or the nearest of all.
pub(crate) fn index(spots: &[Spot], wanted: Spot) -> usize {
    let last = spots.len().saturating_sub(1);
    let own = |s: &Spot| s.step == wanted.step;
    let before = spots.iter().rposition(|s| own(s) && *s <= wanted);
    let here = before.or_else(|| spots.iter().position(own));
    here.or_else(|| spots.iter().rposition(|s| *s <= wanted))
        .unwrap_or(0)
        .min(last)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spot(step: usize, part: Part, page: usize) -> Spot {
        Spot { step, part, page }
    }

    #[test]
    fn an_address_reads_back() {
        for (part, _) in PARTS {
            for (step, page) in [(0, 0), (8, 2), (41, 0)] {
                let at = spot(step, part, page);
                assert_eq!(Spot::read(&at.fragment()), Some(at));
            }
        }
        assert_eq!(
            spot(2, Part::Numbers, 0).fragment(),
            "#at-machine=3.numbers.1"
        );
    }

    #[test]
    fn parts_stand_in_their_order() {
        assert!(PARTS.is_sorted_by_key(|(part, _)| *part));
    }

    #[test]
    fn any_address_is_read_without_harm() {
        assert_eq!(Spot::read("#at-machine"), Some(Spot::FIRST));
        assert_eq!(Spot::read("#at-machine=4"), Some(Spot::before(4)));
        assert_eq!(Spot::read("#at-machine=\u{1F6E0}.x.-3"), Some(Spot::FIRST));
        assert_eq!(
            Spot::read("#at-machine=99999999999999999999.numbers.0"),
            Some(spot(0, Part::Numbers, 0))
        );
        let far = Spot::read("#at-machine=4000000000.more.7").unwrap();
        assert_eq!(far, spot(MOST - 1, Part::More, 6));
        for other in [
            "",
            "#",
            "#strategy",
            "#j=at-machine",
            "#at-machines",
            "at-machine",
        ] {
            assert_eq!(Spot::read(other), None, "{other}");
        }
    }

    #[test]
    fn what_is_not_there_is_found_nearby() {
        let spots = [
            spot(0, Part::Start, 0),
            spot(0, Part::Before, 0),
            spot(0, Part::Numbers, 0),
            spot(1, Part::Before, 0),
            spot(1, Part::Numbers, 0),
        ];
        let at = |wanted| index(&spots, wanted);
        assert_eq!(at(spot(0, Part::Numbers, 0)), 2);
        // A page that this window does not need.
        assert_eq!(at(spot(0, Part::Start, 3)), 0);
        assert_eq!(at(spot(1, Part::More, 0)), 4);
        // A part that comes before all that the step has.
        assert_eq!(at(spot(1, Part::Setup, 0)), 3);
        assert_eq!(at(spot(7, Part::Before, 0)), 4);
        assert_eq!(at(Spot::FIRST), 0);
        assert_eq!(index(&[], Spot::FIRST), 0);
    }
}
