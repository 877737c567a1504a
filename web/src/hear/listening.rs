//! Listening as it goes on: the microphone is looked at by a timer, what came is heard from time to time.

use super::analysis::{Stretch, Wanted, hear_cut, hear_taps, peak};
use super::ear::{Ear, Happens, Heard, Phase};
use super::file::{self, Recorded};
use super::microphone::{LOOK, Microphone};
use super::tape::{Tape, samples_in};
use gloo_timers::callback::{Interval, Timeout};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use thinwright_sound::{Tap, Unheard};
use thinwright_words::hear::{Deaf, Use};
use wasm_bindgen_futures::spawn_local;
use web_sys::File;
use yew::prelude::*;

/// From look to look (ms), and how many looks go by until it is heard again.
const EVERY_MS: u32 = 250;
const LOOKS: u32 = 2;
/// Before this (s) the browser's own silence is still in a look.
const WARM_UP: f64 = 0.8;
/// What is kept of taps, and of a cut (s): a cut is heard once so much of it is there.
const KEPT: f64 = 6.0;
const CUT: f64 = 4.0;
/// After this (s) nobody taps any more.
const PATIENCE: f64 = 120.0;

/// One listening.
struct Session {
    microphone: Microphone,
    to: Use,
    tape: Tape,
    look: Vec<f32>,
    looks: u32,
    taps: Vec<Tap>,
}

/// The handle of the ear: what it has heard, and what it can be told.
#[derive(Clone)]
pub(crate) struct Listener {
    ear: UseReducerHandle<Ear>,
    session: Rc<RefCell<Option<(Session, Interval)>>>,
    /// Counts what was set out for: an answer of the browser that comes too late is dropped.
    ticket: Rc<Cell<u32>>,
    wanted: Wanted,
}

/// The ear.
#[hook]
pub(crate) fn use_listener(wanted: Wanted) -> Listener {
    let listener = Listener {
        ear: use_reducer(Ear::default),
        session: use_mut_ref(|| None),
        ticket: (*use_memo((), |()| Rc::new(Cell::new(0)))).clone(),
        wanted,
    };
    let left = listener.clone();
    use_effect_with((), move |()| move || drop(left.hang_up()));
    listener
}

impl Listener {
    /// What it has heard.
    pub(crate) fn ear(&self) -> &Ear {
        &self.ear
    }

    fn begin(&self, phase: Phase) -> u32 {
        self.hang_up();
        self.ear.dispatch(Happens::Begins(phase));
        self.ticket.get()
    }

    /// Lets go of the microphone.
    fn hang_up(&self) -> Option<Session> {
        self.ticket.set(self.ticket.get().wrapping_add(1));
        let (session, timer) = self.session.borrow_mut().take()?;
        // It may be the timer itself that ends it.
        Timeout::new(0, move || drop(timer)).forget();
        Some(session)
    }

    /// Asks for the microphone and listens.
    pub(crate) fn listen(&self, to: Use) {
        let (own, ticket) = (self.clone(), self.begin(Phase::Asking));
        spawn_local(async move {
            let opened = Microphone::open().await;
            match opened {
                _ if own.ticket.get() != ticket => {}
                Ok(microphone) => own.start(to, microphone),
                Err(why) => own.ear.dispatch(Happens::Fails(why)),
            }
        });
    }

    fn start(&self, to: Use, microphone: Microphone) {
        let own = self.clone();
        let timer = Interval::new(EVERY_MS, move || own.look());
        let kept = if to == Use::Cut { CUT } else { KEPT };
        let session = Session {
            tape: Tape::new(microphone.rate(), kept),
            microphone,
            to,
            look: vec![0.0; LOOK as usize],
            looks: 0,
            taps: Vec::new(),
        };
        *self.session.borrow_mut() = Some((session, timer));
        self.ear.dispatch(Happens::Opens);
    }

    /// Looks at the microphone.
    fn look(&self) {
        let happened = {
            let mut session = self.session.borrow_mut();
            let Some((session, _)) = session.as_mut() else {
                return;
            };
            session.look(self.wanted)
        };
        let Some((level, heard, over)) = happened else {
            return;
        };
        self.ear.dispatch(Happens::Level(level));
        if let Some(heard) = heard {
            self.ear.dispatch(Happens::Hears(heard));
        }
        if over {
            self.stop();
        }
    }

    /// Ends listening; what came is heard to its end.
    pub(crate) fn stop(&self) {
        let Some(mut session) = self.hang_up() else {
            if self.ear.phase != Phase::Still {
                self.ear.dispatch(Happens::Forgets);
            }
            return;
        };
        match session.hear(true, self.wanted) {
            Ok(heard) => {
                self.ear.dispatch(Happens::Hears(heard));
                self.ear.dispatch(Happens::Ends);
            }
            // Ended before anything came: as if it had never begun.
            Err(Unheard::Empty) => self.ear.dispatch(Happens::Forgets),
            Err(why) => self.ear.dispatch(Happens::Fails(Deaf::Unheard(why))),
        }
    }

    /// What was heard belongs to something else.
    pub(crate) fn forget(&self) {
        self.hang_up();
        self.ear.dispatch(Happens::Forgets);
    }

    /// Hears a file in place of the microphone.
    pub(crate) fn open(&self, file: File, to: Use) {
        let (own, ticket) = (self.clone(), self.begin(Phase::Reading));
        spawn_local(async move {
            let recorded = file::read(&file).await;
            if own.ticket.get() != ticket {
                return;
            }
            match recorded.and_then(|r| Ok((r.cut_short, whole(&r, to, own.wanted)?))) {
                Ok((cut_short, heard)) => {
                    own.ear.dispatch(Happens::Hears(heard));
                    own.ear.dispatch(Happens::Ends);
                    if cut_short {
                        own.ear.dispatch(Happens::CutShort);
                    }
                }
                Err(why) => own.ear.dispatch(Happens::Fails(why)),
            }
        });
    }
}

fn whole(recorded: &Recorded, to: Use, wanted: Wanted) -> Result<Heard, Deaf> {
    let stretch = Stretch {
        samples: &recorded.samples,
        rate: recorded.rate,
        from: 0.0,
        whole: true,
    };
    hear(&stretch, to, &[], wanted).map_err(Deaf::Unheard)
}

fn hear(stretch: &Stretch, to: Use, before: &[Tap], wanted: Wanted) -> Result<Heard, Unheard> {
    match to {
        Use::Cut => hear_cut(stretch).map(Heard::Cut),
        Use::Cutter | Use::Web => hear_taps(stretch, before, wanted).map(Heard::Taps),
    }
}

impl Session {
    /// Takes up what is new: its level, what is heard if it is time to, and whether that is all; nothing before it is warm.
    fn look(&mut self, wanted: Wanted) -> Option<(f64, Option<Heard>, bool)> {
        if self.microphone.now() < WARM_UP {
            return None;
        }
        self.microphone.look(&mut self.look);
        self.tape.add(&self.look, self.microphone.now());
        let new = samples_in(f64::from(EVERY_MS) / 1000.0, self.tape.rate());
        let level = peak(&self.look[self.look.len().saturating_sub(new)..]);
        self.looks = self.looks.wrapping_add(1);
        let due = self.looks.is_multiple_of(LOOKS);
        if self.to == Use::Cut {
            return Some((level, None, self.tape.until() >= CUT));
        }
        let heard = due.then(|| self.hear(false, wanted).ok()).flatten();
        let enough = |heard: &Heard| match heard {
            Heard::Taps(taps) => taps.agreed.is_some_and(|a| a.count >= wanted.count),
            Heard::Cut(_) => false,
        };
        let over = self.tape.until() > PATIENCE || heard.as_ref().is_some_and(enough);
        Some((level, heard, over))
    }

    fn hear(&mut self, whole: bool, wanted: Wanted) -> Result<Heard, Unheard> {
        let stretch = Stretch {
            samples: self.tape.samples(),
            rate: self.tape.rate(),
            from: self.tape.from(),
            whole,
        };
        let heard = hear(&stretch, self.to, &self.taps, wanted)?;
        if let Heard::Taps(taps) = &heard {
            self.taps.clone_from(&taps.taps);
        }
        Ok(heard)
    }
}
