//! The ear of the page: where it is with listening, and what it has heard so far. Plain data and one pure function.

use super::analysis::{CutHeard, TapsHeard};
use std::rc::Rc;
use thinwright_words::hear::Deaf;
use yew::Reducible;

/// Where it is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Phase {
    /// It does not listen.
    #[default]
    Still,
    /// The browser asks the person.
    Asking,
    /// A file is read.
    Reading,
    /// It listens.
    Listening,
}

/// What was heard.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Heard {
    Taps(TapsHeard),
    Cut(CutHeard),
}

/// All that is known of listening.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Ear {
    pub(crate) phase: Phase,
    /// The highest sample of the last look, full scale 1.
    pub(crate) level: f64,
    pub(crate) heard: Option<Rc<Heard>>,
    /// Why there is nothing to listen to.
    pub(crate) deaf: Option<Deaf>,
    /// A file was longer than what was listened to.
    pub(crate) cut_short: bool,
}

/// What can happen to it.
#[derive(Debug)]
pub(crate) enum Happens {
    /// It sets out: asking, or reading a file.
    Begins(Phase),
    /// The microphone is open.
    Opens,
    Level(f64),
    Hears(Heard),
    CutShort,
    /// It listens no more; what was heard stays.
    Ends,
    Fails(Deaf),
    /// What was heard belongs to something else.
    Forgets,
}

impl Reducible for Ear {
    type Action = Happens;

    fn reduce(self: Rc<Ear>, action: Happens) -> Rc<Ear> {
        let mut ear = (*self).clone();
        match action {
            Happens::Begins(phase) => {
                ear = Ear {
                    phase,
                    ..Ear::default()
                };
            }
            Happens::Opens => ear.phase = Phase::Listening,
            Happens::Level(level) => ear.level = level,
            Happens::Hears(heard) => ear.heard = Some(Rc::new(heard)),
            Happens::CutShort => ear.cut_short = true,
            Happens::Ends => {
                ear.phase = Phase::Still;
                ear.level = 0.0;
            }
            Happens::Fails(why) => {
                ear = Ear {
                    deaf: Some(why),
                    ..Ear::default()
                };
            }
            Happens::Forgets => ear = Ear::default(),
        }
        Rc::new(ear)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(happenings: Vec<Happens>) -> Ear {
        let ear = happenings
            .into_iter()
            .fold(Rc::new(Ear::default()), Reducible::reduce);
        (*ear).clone()
    }

    fn heard() -> Happens {
        Happens::Hears(Heard::Taps(TapsHeard::default()))
    }

    #[test]
    fn what_was_heard_stays_when_it_ends_and_goes_when_it_begins_anew() {
        let begin = || Happens::Begins(Phase::Asking);
        let ended = after(vec![begin(), Happens::Opens, heard(), Happens::Ends]);
        assert_eq!(ended.phase, Phase::Still);
        assert!(ended.heard.is_some());
        let again = after(vec![
            begin(),
            Happens::Opens,
            heard(),
            Happens::Ends,
            begin(),
        ]);
        assert_eq!(again.phase, Phase::Asking);
        assert!(again.heard.is_none());
    }

    #[test]
    fn a_failure_leaves_nothing_but_its_reason() {
        let failed = after(vec![
            Happens::Begins(Phase::Asking),
            Happens::Fails(Deaf::Refused),
        ]);
        assert_eq!(failed.phase, Phase::Still);
        assert_eq!(failed.deaf, Some(Deaf::Refused));
        assert_eq!(
            after(vec![Happens::Fails(Deaf::Busy), Happens::Forgets]),
            Ear::default()
        );
    }
}
