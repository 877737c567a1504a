//! Who carries things into the shop and out of it, tells the other windows, and hears from them.

use super::asked;
use super::place::Place;
use super::round::Round;
use super::small::{self, OPEN};
use crate::browser::LocalShelf;
use crate::desk::Desk;
use crate::shelf::Shelf;
use crate::state::{Action, Message, ShopNews};
use crate::text::shop as text;
use gloo_timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use thinwright_jobfile::shop::{Content, Kind, Settled, Shop, TakenAway, Thing, Told};
use wasm_bindgen_futures::spawn_local;
use web_sys::BroadcastChannel;
use yew::prelude::*;

/// The channel between the windows of the page.
const CHANNEL: &str = "thinwright.shop";

/// The keeper: the same for as long as the page lives.
#[derive(Clone)]
pub(crate) struct Keeper(Rc<Inner>);

struct Inner {
    place: Place,
    round: RefCell<Round>,
    timer: RefCell<Option<Timeout>>,
    channel: Option<BroadcastChannel>,
    /// This window's own number.
    tab: String,
}

impl PartialEq for Keeper {
    fn eq(&self, other: &Keeper) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl Keeper {
    pub(super) fn new(place: Place, tab: String) -> Keeper {
        Keeper(Rc::new(Inner {
            place,
            round: RefCell::default(),
            timer: RefCell::default(),
            channel: BroadcastChannel::new(CHANNEL).ok(),
            tab,
        }))
    }

    pub(super) fn channel(&self) -> Option<&BroadcastChannel> {
        self.0.channel.as_ref()
    }

    /// The page has this job in hand: a draft of it is kept at once, and it itself soon.
    pub(super) fn take_up(&self, desk: &Desk, thing: Thing, shop: &Shop, heard: usize) {
        let shelf = LocalShelf::new();
        name_open(&thing.id);
        let Some(thing) = self.0.round.borrow_mut().take_up(thing, shop, heard) else {
            return;
        };
        let draft = shelf.put(&small::draft_key(&self.0.tab, &thing.id), &thing.write());
        if matches!(self.0.place, Place::Nowhere) && !draft {
            return;
        }
        let (keeper, desk, names) = (self.clone(), desk.clone(), shop.names(Kind::Job));
        let rest = desk.catalog.numbers.keep_after_s * 1000.0;
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a short time of the table"
        )]
        let timer = Timeout::new(rest.max(0.0) as u32, move || keeper.go(&desk, names));
        self.0.timer.replace(Some(timer));
    }

    /// Keeps what waits, at once.
    pub(super) fn hurry(&self, desk: &Desk) {
        if self.0.timer.take().is_some() {
            self.go(desk, Vec::new());
        }
    }

    fn go(&self, desk: &Desk, names: Vec<String>) {
        let (keeper, desk) = (self.clone(), desk.clone());
        spawn_local(async move {
            while let Some(thing) = keeper.start() {
                let spare = fresh_id();
                match keeper.0.place.keep(&thing, &spare, &names).await {
                    Ok(settled) => keeper.kept(&desk, &thing, settled),
                    Err(fault) => {
                        keeper.0.round.borrow_mut().failed(thing);
                        desk.say(Action::Tell(alarm(text::job_not_kept(&text::fault(
                            &fault,
                        )))));
                        return;
                    }
                }
            }
        });
    }

    fn start(&self) -> Option<Thing> {
        self.0.round.borrow_mut().start()
    }

    fn kept(&self, desk: &Desk, asked: &Thing, settled: Settled) {
        self.0.round.borrow_mut().kept(&asked.id, &settled.thing);
        small::draft_kept(&LocalShelf::new(), &self.0.tab, asked, &settled.thing);
        if settled.write {
            self.call();
            self.ask_to_stay(desk);
        }
        if let Some(message) = told(&settled.told, settled.thing.content.name()) {
            desk.say(Action::Tell(message));
        }
        let asked = asked.id.as_str().into();
        desk.say(Action::Shop(ShopNews::Settled(
            asked,
            Box::new(settled.thing),
        )));
    }

    /// Keeps a thing that is no job in hand, and says what there is to say after it.
    pub(super) fn keep(
        &self,
        desk: &Desk,
        thing: Thing,
        names: Vec<String>,
        after: Option<Message>,
    ) {
        let (keeper, desk) = (self.clone(), desk.clone());
        spawn_local(async move {
            match keeper.0.place.keep(&thing, &fresh_id(), &names).await {
                Ok(settled) => {
                    keeper.call();
                    keeper.ask_to_stay(&desk);
                    let name = settled.thing.content.name();
                    let message = told(&settled.told, name).or(after);
                    desk.say(Action::Shop(ShopNews::Put(Box::new(settled.thing))));
                    message.into_iter().for_each(|m| desk.say(Action::Tell(m)));
                }
                Err(fault) => {
                    let (name, why) = (thing.content.name(), text::fault(&fault));
                    desk.say(Action::Tell(alarm(text::thing_not_kept(name, &why))));
                }
            }
        });
    }

    /// Takes a thing out, where it still stands as the page knows it.
    pub(super) fn take_out(&self, desk: &Desk, thing: Thing) {
        let (keeper, desk) = (self.clone(), desk.clone());
        spawn_local(async move {
            let message = match keeper.0.place.out(&thing).await {
                Ok(TakenAway::Out | TakenAway::Gone) => {
                    keeper.0.round.borrow_mut().forget(&thing.id);
                    LocalShelf::new().take(&small::draft_key(&keeper.0.tab, &thing.id));
                    desk.say(Action::Shop(ShopNews::Gone(Box::new(thing))));
                    keeper.call();
                    None
                }
                Ok(TakenAway::Left) => {
                    keeper.look_again(&desk);
                    Some(text::changed_so_left(thing.content.name()))
                }
                Err(fault) => Some(text::not_taken_out(
                    thing.content.name(),
                    &text::fault(&fault),
                )),
            };
            message
                .into_iter()
                .for_each(|m| desk.say(Action::Tell(alarm(m))));
        });
    }

    /// Takes out a text that cannot be read.
    pub(super) fn drop_unread(&self, desk: &Desk, key: String, text: String) {
        let (keeper, desk) = (self.clone(), desk.clone());
        spawn_local(async move {
            drop(keeper.0.place.drop_unread(&key, &text).await);
            keeper.look_again(&desk);
            keeper.call();
        });
    }

    /// Looks at the whole shop again; where the job in hand went on elsewhere, that is told.
    pub(super) fn look_again(&self, desk: &Desk) {
        let (keeper, desk) = (self.clone(), desk.clone());
        spawn_local(async move {
            let Ok(texts) = keeper.0.place.all().await else {
                return;
            };
            let shop = Shop::sort(texts);
            let overtaken = keeper.0.round.borrow_mut().overtaken(&shop);
            desk.say(Action::Shop(ShopNews::All(Box::new(shop))));
            if let Some(name) = overtaken {
                desk.say(Action::Tell(alarm(text::changed_elsewhere(&name))));
            }
        });
    }

    /// Tells the other windows that something has changed.
    fn call(&self) {
        if let Some(channel) = &self.0.channel {
            drop(channel.post_message(&self.0.tab.as_str().into()));
        }
    }

    /// Asks the browser, once on this device, to keep what is here even when it runs short of room.
    fn ask_to_stay(&self, desk: &Desk) {
        let (shelf, desk) = (LocalShelf::new(), desk.clone());
        if !matches!(self.0.place, Place::Database(_)) || shelf.get(super::STAY).is_some() {
            return;
        }
        // Not twice while it answers.
        shelf.put(super::STAY, "asked");
        spawn_local(async move {
            if let Some(stays) = asked::persist().await {
                LocalShelf::new().put(super::STAY, if stays { "yes" } else { "no" });
                desk.say(Action::Shop(ShopNews::Lasting(stays)));
            }
        });
    }
}

/// Which job this window has in hand, for its next visit and for that of new windows.
pub(super) fn name_open(id: &str) {
    asked::put_in_session(OPEN, id);
    LocalShelf::new().put(OPEN, id);
}

/// An id that nothing has.
pub(super) fn fresh_id() -> String {
    format!("t-{:016x}", asked::lot())
}

fn alarm(text: String) -> Message {
    Message { text, alarm: true }
}

/// What is told of a keeping; nothing of the usual.
fn told(told: &Told, name: &str) -> Option<Message> {
    match told {
        Told::Kept | Told::Same => None,
        Told::Again => Some(Message {
            text: text::kept_again(name),
            alarm: false,
        }),
        Told::Both { name } => Some(alarm(text::kept_both(name))),
        Told::Aside(error) => Some(alarm(text::put_aside(name, &crate::text::fault(error)))),
        Told::Newer(error) => Some(alarm(text::beside_newer(name, &crate::text::fault(error)))),
    }
}

/// The keeper of the page.
///
/// # Panics
/// Outside the page's provider, which is nowhere.
#[hook]
pub(crate) fn use_keeper() -> Keeper {
    use_context::<Keeper>().expect("App puts the keeper around everything")
}

/// Whether a job is worth keeping: it stands in the shop already, or it is none of the samples.
pub(super) fn worth_keeping(shop: &Shop, id: &str, content: &Content) -> bool {
    let sample = || super::sample_of(content).is_some();
    shop.get(id).is_some() || !sample()
}
