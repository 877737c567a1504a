//! What stands around the answers: the title block, messages, and how the search stands.

mod file;
mod messages;
mod status;
mod title;
mod tools;

pub(crate) use messages::Messages;
pub(crate) use status::Status;
pub(crate) use title::Title;
