//! What the program does when it runs as a worker.

use super::runner::Runner;
use gloo_timers::callback::Timeout;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use thinwright_jobfile::{FromWorker, ToWorker};
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

/// The first word of a worker: it listens now.
pub(super) const READY: &str = "ready";

/// The worker's own scope; nothing on a page.
fn scope() -> Option<DedicatedWorkerGlobalScope> {
    js_sys::global().dyn_into().ok()
}

/// Whether this is a worker.
pub(crate) fn in_worker() -> bool {
    scope().is_some()
}

/// The desk of a worker.
struct Bench {
    scope: DedicatedWorkerGlobalScope,
    runner: RefCell<Runner>,
    /// A turn is on its way.
    turning: Cell<bool>,
}

/// Listens for answers and works on the newest.
pub(crate) fn run() {
    let Some(scope) = scope() else {
        return;
    };
    let bench = Rc::new(Bench {
        scope: scope.clone(),
        runner: RefCell::new(Runner::new()),
        turning: Cell::new(false),
    });
    let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let order = event
            .data()
            .as_string()
            .and_then(|text| ToWorker::decode(&text).ok());
        if let Some(order) = order {
            let said = bench.runner.borrow_mut().take_up(&order);
            said.iter().for_each(|said| bench.post(said));
            turn_soon(&bench);
        }
    });
    scope.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
    // It listens as long as the worker lives.
    on_message.forget();
    post(&scope, READY);
}

impl Bench {
    fn post(&self, said: &FromWorker) {
        post(&self.scope, &said.encode());
    }
}

fn post(scope: &DedicatedWorkerGlobalScope, text: &str) {
    // It fails only for what cannot be copied, which a text can.
    drop(scope.post_message(&text.into()));
}

/// One slice, after the messages that wait.
fn turn_soon(bench: &Rc<Bench>) {
    if bench.turning.replace(true) {
        return;
    }
    let bench = bench.clone();
    Timeout::new(0, move || {
        bench.turning.set(false);
        let from = js_sys::Date::now();
        let said = bench.runner.borrow_mut().turn();
        bench.runner.borrow_mut().took(js_sys::Date::now() - from);
        said.iter().for_each(|said| bench.post(said));
        if bench.runner.borrow().busy() {
            turn_soon(&bench);
        }
    })
    .forget();
}
