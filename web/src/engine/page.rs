//! The page's side: starts the worker, hands it the newest answers, passes on what it says.

use super::inside::READY;
use super::runner::Runner;
use crate::desk::Desk;
use crate::state::{Action, Heard, Message, Standing};
use crate::text;
use gloo_timers::callback::Timeout;
use js_sys::{Function, Reflect};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;
use thinwright_core::Sight;
use thinwright_jobfile::{ChartOf, FromWorker, Order, Report, ToWorker};
use wasm_bindgen::prelude::*;
use web_sys::{Event, MessageEvent, Worker};

/// How long a worker may take until it listens, ms.
const PATIENCE: u32 = 15_000;
/// How often a worker that broke down is started again for other answers.
const MOST_STARTS: u32 = 5;

/// Who does the work.
enum Hand {
    /// Nobody yet.
    None,
    /// A worker, which may not listen yet.
    Worker {
        worker: Worker,
        ready: bool,
        _ears: Ears,
    },
    /// The page itself.
    Page(Box<Runner>),
}

/// What listens to a worker.
struct Ears {
    _message: Closure<dyn FnMut(MessageEvent)>,
    _error: Closure<dyn FnMut(Event)>,
}

/// The engine as the page sees it.
pub(super) struct Engine(Rc<Inner>);

struct Inner {
    desk: Desk,
    hand: RefCell<Hand>,
    /// The newest answers, until a worker listens.
    waiting: RefCell<Option<ToWorker>>,
    /// What of the web was asked to be looked at for the answers in hand, and how much of it was handed over.
    sights: RefCell<(Vec<Sight>, usize)>,
    /// The charts that were asked for, how many of them were handed over, and how many have come back, in the same order.
    charts: RefCell<(Vec<ChartOf>, usize, usize)>,
    /// What was said and not yet heard.
    heard: RefCell<VecDeque<FromWorker>>,
    /// The answers in hand.
    generation: RefCell<(u32, u32)>,
}

impl Engine {
    pub(super) fn new(desk: Desk) -> Engine {
        Engine(Rc::new(Inner {
            desk,
            hand: RefCell::new(Hand::None),
            waiting: RefCell::new(None),
            sights: RefCell::default(),
            charts: RefCell::default(),
            heard: RefCell::default(),
            generation: RefCell::new((0, 0)),
        }))
    }

    /// Works on these answers in place of all before.
    pub(super) fn ask(&self, order: ToWorker) {
        self.0.generation.borrow_mut().0 = order.generation;
        self.0.sights.take();
        self.0.charts.take();
        if matches!(*self.0.hand.borrow(), Hand::None) {
            start(&self.0);
        }
        *self.0.waiting.borrow_mut() = Some(order);
        pass_on(&self.0);
    }

    /// Has the web looked at, once, if it is the web of the answers in hand.
    pub(super) fn look(&self, generation: u32, sight: &Sight) {
        let current = self.0.generation.borrow().0 == generation;
        if current && !self.0.sights.borrow().0.contains(sight) {
            self.0.sights.borrow_mut().0.push(sight.clone());
            pass_on(&self.0);
        }
    }

    /// Has a chart drawn up, once, if it is of the strategy of the answers in hand.
    pub(super) fn draw_up(&self, generation: u32, of: &ChartOf) {
        let current = self.0.generation.borrow().0 == generation;
        if current && !self.0.charts.borrow().0.contains(of) {
            self.0.charts.borrow_mut().0.push(of.clone());
            pass_on(&self.0);
        }
    }

    /// Stops the work on the answers of a generation; what nobody has taken up yet is only taken back.
    pub(super) fn stop(&self, generation: u32) {
        if self.0.waiting.borrow_mut().take().is_some() {
            let heard = Heard::Stopped(Standing::default(), None);
            self.0.desk.say(Action::Heard(generation, heard));
            return;
        }
        *self.0.waiting.borrow_mut() = Some(ToWorker {
            generation,
            order: Order::Stop,
        });
        pass_on(&self.0);
    }
}

/// What is next to be handed over: the newest answers before charts of them and looks at them.
fn next(inner: &Inner) -> Option<ToWorker> {
    if let Some(order) = inner.waiting.borrow_mut().take() {
        return Some(order);
    }
    let order = next_chart(inner).or_else(|| {
        let (sights, handed) = &mut *inner.sights.borrow_mut();
        let sight = sights.get(*handed)?.clone();
        *handed += 1;
        Some(Order::Look(sight))
    })?;
    Some(ToWorker {
        generation: inner.generation.borrow().0,
        order,
    })
}

fn next_chart(inner: &Inner) -> Option<Order> {
    let (charts, handed, _) = &mut *inner.charts.borrow_mut();
    let chart = charts.get(*handed)?.clone();
    *handed += 1;
    Some(Order::Chart(chart))
}

/// What a chart that has come is of: charts come in the order in which they were asked for, those of older answers not at all.
fn chart_of(inner: &Inner, generation: u32, step: u32) -> Option<ChartOf> {
    (generation == inner.generation.borrow().0).then_some(())?;
    let (charts, handed, back) = &mut *inner.charts.borrow_mut();
    let of = charts[..*handed].get(*back)?.clone();
    *back += 1;
    (of.step == step).then_some(of)
}

/// Hands over the newest answers, charts and looks, if somebody listens.
fn pass_on(inner: &Rc<Inner>) {
    let mut hand = inner.hand.borrow_mut();
    match &mut *hand {
        Hand::None | Hand::Worker { ready: false, .. } => {}
        Hand::Worker { worker, .. } => {
            while let Some(order) = next(inner) {
                // It fails only for what cannot be copied, which a text can.
                drop(worker.post_message(&order.encode().into()));
            }
        }
        Hand::Page(runner) => {
            let idle = !runner.busy();
            let mut said = Vec::new();
            while let Some(order) = next(inner) {
                said.extend(runner.take_up(&order));
            }
            let busy = runner.busy();
            drop(hand);
            said.into_iter().for_each(|said| hear(inner, said));
            if idle && busy {
                turn_soon(inner);
            }
        }
    }
}

/// One slice on the page, after what the person does.
fn turn_soon(inner: &Rc<Inner>) {
    let inner = inner.clone();
    Timeout::new(0, move || {
        let (said, busy) = match &mut *inner.hand.borrow_mut() {
            Hand::Page(runner) => {
                let from = js_sys::Date::now();
                let said = runner.turn();
                runner.took(js_sys::Date::now() - from);
                (said, runner.busy())
            }
            Hand::None | Hand::Worker { .. } => (None, false),
        };
        said.into_iter().for_each(|said| hear(&inner, said));
        if busy {
            turn_soon(&inner);
        }
    })
    .forget();
}

/// Starts a worker, or does without.
fn start(inner: &Rc<Inner>) {
    let started = {
        let mut counts = inner.generation.borrow_mut();
        counts.1 += 1;
        counts.1 <= MOST_STARTS
    };
    let worker = if started {
        start_worker()
    } else {
        Err(JsValue::NULL)
    };
    let Ok(worker) = worker else {
        do_without(inner);
        return;
    };
    let ears = listen(inner, &worker);
    *inner.hand.borrow_mut() = Hand::Worker {
        worker,
        ready: false,
        _ears: ears,
    };
    let late = inner.clone();
    Timeout::new(PATIENCE, move || {
        let waits = matches!(*late.hand.borrow(), Hand::Worker { ready: false, .. });
        if waits {
            do_without(&late);
        }
    })
    .forget();
}

/// The way that the page's own script gives.
fn start_worker() -> Result<Worker, JsValue> {
    let ours = Reflect::get(&js_sys::global(), &"thinwright".into())?;
    let start: Function = Reflect::get(&ours, &"startWorker".into())?.dyn_into()?;
    start.call1(&ours, &wasm_bindgen::module())?.dyn_into()
}

fn listen(inner: &Rc<Inner>, worker: &Worker) -> Ears {
    let heard = inner.clone();
    let message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let Some(text) = event.data().as_string() else {
            return;
        };
        if text == READY {
            if let Hand::Worker { ready, .. } = &mut *heard.hand.borrow_mut() {
                *ready = true;
            }
            pass_on(&heard);
        } else if let Ok(said) = FromWorker::decode(&text) {
            hear_soon(&heard, said);
        } else {
            broke(&heard);
        }
    });
    let failed = inner.clone();
    let error = Closure::<dyn FnMut(Event)>::new(move |_: Event| {
        let ready = matches!(*failed.hand.borrow(), Hand::Worker { ready: true, .. });
        if ready {
            broke(&failed);
        } else {
            do_without(&failed);
        }
    });
    worker.set_onmessage(Some(message.as_ref().unchecked_ref()));
    worker.set_onerror(Some(error.as_ref().unchecked_ref()));
    Ears {
        _message: message,
        _error: error,
    }
}

/// The worker broke down over the answers in hand: others get a new one.
fn broke(inner: &Rc<Inner>) {
    dismiss(inner, Hand::None);
    let generation = inner.generation.borrow().0;
    inner.desk.say(Action::Broke(
        generation,
        Message {
            text: text::search_broke().to_owned(),
            alarm: true,
        },
    ));
}

/// The page does the work itself, and says so.
fn do_without(inner: &Rc<Inner>) {
    dismiss(inner, Hand::Page(Box::new(Runner::new())));
    inner.desk.say(Action::Tell(Message {
        text: text::no_worker().to_owned(),
        alarm: false,
    }));
    pass_on(inner);
}

/// Puts another hand in place. What listened is let go of later: it may be what is running now.
fn dismiss(inner: &Rc<Inner>, next: Hand) {
    let old = inner.hand.replace(next);
    if let Hand::Worker { worker, .. } = &old {
        worker.set_onmessage(None);
        worker.set_onerror(None);
        worker.terminate();
    }
    Timeout::new(0, move || drop(old)).forget();
}

/// Hears a message in a task of its own, in its order: reading a strategy and showing it are work enough by themselves.
fn hear_soon(inner: &Rc<Inner>, said: FromWorker) {
    inner.heard.borrow_mut().push_back(said);
    let inner = inner.clone();
    Timeout::new(0, move || {
        let next = inner.heard.borrow_mut().pop_front();
        next.into_iter().for_each(|said| hear(&inner, said));
    })
    .forget();
}

fn hear(inner: &Rc<Inner>, said: FromWorker) {
    let generation = said.generation;
    let heard = match said.report {
        Report::Working {
            covered,
            best,
            checked,
        } => Heard::Working(covered.into(), best.map(Box::new), checked),
        Report::Done { covered, outcome } => Heard::Done(covered.into(), Box::new(outcome)),
        Report::Stopped { covered, best } => Heard::Stopped(covered.into(), best.map(Box::new)),
        Report::Look { sight, seen } => Heard::Look(sight, seen.map(Rc::new)),
        Report::Chart { step, lobes } => match chart_of(inner, generation, step) {
            Some(of) => Heard::Chart(Box::new(of), lobes.map(Rc::new)),
            None => return,
        },
        // The page reads the answers itself before it asks; both are of one build.
        Report::Problems(_) => return,
    };
    inner.desk.say(Action::Heard(generation, heard));
}
