//! Everything in one file.

use super::thing::Thing;
use crate::error::JobFileError;
use crate::job::{self, JobFile};
use crate::node::Node;
use crate::object::{Object, list, parse_up_to};

/// The key that says what the file is.
const KIND: &str = "thinwright_shop";
/// Version of the format.
const VERSION: u32 = 1;
/// Most bytes of a file.
const MOST_BYTES: usize = 50_000_000;
/// Most things in a file.
const MOST_THINGS: usize = 20_000;
/// What stands for the id of a job that comes by itself.
const ALONE: &str = "job";

/// A file of things.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShopFile {
    /// What can be read.
    pub things: Vec<Thing>,
    /// What cannot.
    pub left: Vec<Left>,
}

/// An entry of a file that cannot be read; the others can.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Left {
    /// Its place in the file, such as `things.3`.
    pub place: String,
    /// What is wrong with it; places are inside the entry.
    pub error: JobFileError,
}

impl ShopFile {
    /// Reads a file of things, or a job file, which is one thing.
    ///
    /// # Errors
    /// What is wrong with the file as a whole. No bytes make it panic.
    pub fn read(bytes: &[u8]) -> Result<ShopFile, JobFileError> {
        let node = parse_up_to(bytes, MOST_BYTES)?;
        let mut object = match Object::versioned(&node, KIND, VERSION) {
            Err(JobFileError::SomethingElse { .. }) if is_job(&node) => {
                let thing = Thing::new(ALONE, "", JobFile::take(&node)?.into());
                return Ok(ShopFile {
                    things: vec![thing],
                    left: Vec::new(),
                });
            }
            object => object?,
        };
        let entries = list("things", object.take("things")?, MOST_THINGS)?;
        object.end()?;
        let mut file = ShopFile::default();
        for (place, node) in entries {
            match Thing::take(node) {
                Ok(thing) => file.things.push(thing),
                Err(error) => file.left.push(Left { place, error }),
            }
        }
        Ok(file)
    }

    /// The file of things, always the same for the same things.
    pub fn write(things: &[Thing]) -> String {
        let mut sorted: Vec<&Thing> = things.iter().collect();
        sorted.sort_by(|a, b| a.id.cmp(&b.id));
        Node::object([
            (KIND, Node::Number(f64::from(VERSION))),
            (
                "things",
                Node::List(sorted.into_iter().map(Thing::put).collect()),
            ),
        ])
        .lines()
    }
}

fn is_job(node: &Node) -> bool {
    matches!(node, Node::Object(fields) if fields.iter().any(|(key, _)| key == job::KIND))
}
