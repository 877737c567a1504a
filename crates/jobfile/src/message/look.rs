//! A look at the web and what was seen: big lists as whole numbers, fit for a picture, short and quick to read.

use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, inside, list, not, whole};
use crate::wire::{Wire, at, wire_struct, wire_word};
use thinwright_core::part::{Height, State};
use thinwright_core::plan::Point;
use thinwright_core::{Detail, Sight, Tone, WebError, WebPicture};
use thinwright_quantity::Length;

/// Most entries of a list of a picture: far more than the most triangles that are made, three numbers each.
const MOST_NUMBERS: usize = 600_000;
/// Most tones of a picture.
const MOST_TONES: usize = 100;
/// Steps from 0 to the greatest value of a list.
const STEPS: f64 = 1.0e5;
/// Nodes are told in micrometres.
const UM_PER_MM: f64 = 1.0e3;

wire_word!(Detail { "coarse" Coarse, "fine" Fine, });

wire_struct!(Sight {
    "state" state,
    "face_up" up,
    "second" second,
    "bolted" bolted,
    "backing_row_from_0" backing,
    "patch_radius_m" patch,
    "detail" detail,
});

wire_struct!(State { "stock_nm" stock, });

wire_struct!(Point { "x_mm" x, "y_mm" y, });

impl Wire for Height {
    fn put(&self) -> Node {
        #[allow(clippy::cast_precision_loss, reason = "exact below 9 000 km")]
        Node::Number(self.0 as f64)
    }

    fn take(place: &str, node: &Node) -> Result<Height, JobFileError> {
        match node {
            Node::Number(nm) if nm.fract() == 0.0 =>
            {
                #[allow(
                    clippy::cast_possible_truncation,
                    reason = "whole, and a saturating cast"
                )]
                Ok(Height(*nm as i64))
            }
            _ => Err(not(place, Wanted::Number)),
        }
    }
}

/// What was seen, or why nothing was.
impl Wire for Result<WebPicture, WebError> {
    fn put(&self) -> Node {
        match self {
            Ok(picture) => Node::object([("picture", picture.put())]),
            Err(why) => Node::object([("none", why.put())]),
        }
    }

    fn take(place: &str, node: &Node) -> Result<Result<WebPicture, WebError>, JobFileError> {
        let mut object = Object::new(place, node)?;
        let seen = match object.optional("none") {
            Some(why) => Err(WebError::take(&object.place("none"), why)?),
            None => Ok(at(&mut object, "picture")?),
        };
        object.end()?;
        Ok(seen)
    }
}

const REASONS: &[&str] = &[
    "no-floor",
    "too-narrow",
    "self-crossing",
    "too-large",
    "pieces",
    "unheld",
];

impl Wire for WebError {
    fn put(&self) -> Node {
        let (reason, width) = match *self {
            WebError::NoFloor => (0, None),
            WebError::TooNarrow { width } => (1, Some(width)),
            WebError::SelfCrossing => (2, None),
            WebError::Pieces => (4, None),
            WebError::Unheld => (5, None),
            // Whatever else there may be one day is too much for now.
            _ => (3, None),
        };
        Node::object([
            ("is", Node::text(REASONS[reason])),
            ("width_m", width.put()),
        ])
    }

    fn take(place: &str, node: &Node) -> Result<WebError, JobFileError> {
        let mut object = Object::new(place, node)?;
        let (word, width) = (
            object.text("is")?,
            at::<Option<Length>>(&mut object, "width_m")?,
        );
        object.end()?;
        match (REASONS.iter().position(|r| *r == word), width) {
            (Some(0), None) => Ok(WebError::NoFloor),
            (Some(1), Some(width)) => Ok(WebError::TooNarrow { width }),
            (Some(2), None) => Ok(WebError::SelfCrossing),
            (Some(3), None) => Ok(WebError::TooLarge),
            (Some(4), None) => Ok(WebError::Pieces),
            (Some(5), None) => Ok(WebError::Unheld),
            _ => Err(not(&inside(place, "is"), Wanted::OneOf(REASONS))),
        }
    }
}

/// Whole numbers in a row.
fn row(values: impl Iterator<Item = f64>) -> Node {
    Node::List(values.map(|v| Node::Number(v.round())).collect())
}

/// A row of so many numbers, or of any count.
fn numbers(place: &str, node: &Node, count: Option<usize>) -> Result<Vec<f64>, JobFileError> {
    let Node::List(items) = node else {
        return Err(not(place, Wanted::List));
    };
    if items.len() > MOST_NUMBERS {
        return Err(JobFileError::TooMany {
            place: place.to_owned(),
            most: MOST_NUMBERS,
        });
    }
    if count.is_some_and(|count| count != items.len()) {
        return Err(not(place, Wanted::List));
    }
    items.iter().map(|n| f64::take(place, n)).collect()
}

/// Values as whole steps of which the greatest has [`STEPS`].
fn scaled(values: &[f64]) -> Node {
    let most = values.iter().fold(0.0_f64, |m, v| m.max(v.abs()));
    let step = if most > 0.0 { most / STEPS } else { 1.0 };
    let steps = row(values.iter().map(|v| v / step));
    Node::object([("step", step.put()), ("steps", steps)])
}

fn unscaled(object: &mut Object<'_>, key: &str, count: usize) -> Result<Vec<f64>, JobFileError> {
    let place = object.place(key);
    let mut inner = Object::new(&place, object.take(key)?)?;
    let step: f64 = at(&mut inner, "step")?;
    let steps = numbers(&place, inner.take("steps")?, Some(count))?;
    inner.end()?;
    Ok(steps.into_iter().map(|v| v * step).collect())
}

impl Wire for WebPicture {
    fn put(&self) -> Node {
        let places = self.nodes.iter().flat_map(|p| [p.x, p.y]);
        let corners = self.triangles.iter().flatten().map(|i| f64::from(*i));
        let tones = self.tones.iter().map(|tone| {
            Node::object([("hz", tone.frequency.put()), ("shape", scaled(&tone.shape))])
        });
        Node::object([
            ("nodes_um", row(places.map(|mm| mm * UM_PER_MM))),
            ("triangles", row(corners)),
            (
                "floor",
                row(self.floor.iter().map(|f| f64::from(u8::from(*f)))),
            ),
            ("compliance_m_per_n", scaled(&self.compliance)),
            ("softest", self.softest.put()),
            ("most_m_per_n", self.most.put()),
            ("bow_m_per_n", scaled(&self.bow)),
            ("tones", Node::List(tones.collect())),
            ("error", self.error.put()),
        ])
    }

    fn take(place: &str, node: &Node) -> Result<WebPicture, JobFileError> {
        let mut object = Object::new(place, node)?;
        let um = numbers(&object.place("nodes_um"), object.take("nodes_um")?, None)?;
        if um.len() % 2 != 0 {
            return Err(not(&object.place("nodes_um"), Wanted::List));
        }
        let nodes: Vec<Point> = um
            .chunks_exact(2)
            .map(|p| Point::new(p[0] / UM_PER_MM, p[1] / UM_PER_MM))
            .collect();
        let triangles = triangles(&mut object, nodes.len())?;
        let floor = numbers(
            &object.place("floor"),
            object.take("floor")?,
            Some(triangles.len()),
        )?;
        let compliance = unscaled(&mut object, "compliance_m_per_n", nodes.len())?;
        let bow = unscaled(&mut object, "bow_m_per_n", nodes.len())?;
        let tones = tones(&mut object, nodes.len())?;
        let picture = WebPicture {
            floor: floor.into_iter().map(|f| f > 0.0).collect(),
            softest: at(&mut object, "softest")?,
            most: at(&mut object, "most_m_per_n")?,
            error: at(&mut object, "error")?,
            nodes,
            triangles,
            compliance,
            bow,
            tones,
        };
        object.end()?;
        Ok(picture)
    }
}

/// Triangles whose corners are among so many nodes.
fn triangles(object: &mut Object<'_>, nodes: usize) -> Result<Vec<[u32; 3]>, JobFileError> {
    let place = object.place("triangles");
    let Node::List(items) = object.take("triangles")? else {
        return Err(not(&place, Wanted::List));
    };
    if items.len() % 3 != 0 || items.len() > MOST_NUMBERS {
        return Err(not(&place, Wanted::List));
    }
    let last = u32::try_from(nodes.saturating_sub(1)).unwrap_or(u32::MAX);
    let corner = |node: &Node| whole(&place, node, last);
    let each = items.chunks_exact(3);
    each.map(|c| Ok([corner(&c[0])?, corner(&c[1])?, corner(&c[2])?]))
        .collect()
}

fn tones(object: &mut Object<'_>, nodes: usize) -> Result<Vec<Tone>, JobFileError> {
    let place = object.place("tones");
    let all = list(&place, object.take("tones")?, MOST_TONES)?;
    let one = |(place, node): &(String, &Node)| {
        let mut object = Object::new(place, node)?;
        let tone = Tone {
            frequency: at(&mut object, "hz")?,
            shape: unscaled(&mut object, "shape", nodes)?,
        };
        object.end()?;
        Ok(tone)
    };
    all.iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{FromWorker, Order, Report, ToWorker};
    use thinwright_core::task::Face;
    use thinwright_quantity::Frequency;

    fn sight() -> Sight {
        Sight {
            state: State {
                stock: vec![
                    (Height(-2_000_000), Height(19_000_000)),
                    (Height(1), Height(1)),
                ],
            },
            up: Face::B,
            second: true,
            bolted: false,
            backing: 1,
            patch: Length::mm(1.5),
            detail: Detail::Fine,
        }
    }

    fn picture() -> WebPicture {
        let corner = |x, y| Point::new(x, y);
        WebPicture {
            nodes: vec![
                corner(0.1234, -7.0),
                corner(60.0, 0.0),
                corner(0.0, 60.0),
                corner(61.5, 61.5),
            ],
            triangles: vec![[0, 1, 2], [1, 3, 2]],
            floor: vec![true, false],
            compliance: vec![1.0e-7, 2.345_678_9e-7, 0.0, 9.87e-10],
            softest: corner(60.0, 0.1 + 0.2),
            most: 2.345_678_9e-7,
            bow: vec![-1.0e-9, 2.0e-7, 0.0, 1.0e-8],
            tones: vec![Tone {
                frequency: Frequency::from_si(812.3),
                shape: vec![1.0, -0.333_333_333, 0.0, 0.5],
            }],
            error: 0.013,
        }
    }

    fn there_and_back(seen: Result<WebPicture, WebError>) -> Result<WebPicture, WebError> {
        let said = FromWorker {
            generation: 7,
            report: Report::Look {
                sight: sight(),
                seen: Box::new(seen),
            },
        };
        let heard = FromWorker::decode(&said.encode()).unwrap();
        // What was rounded once stays as it is.
        assert_eq!(FromWorker::decode(&heard.encode()).as_ref(), Ok(&heard));
        let Report::Look { sight: of, seen } = heard.report else {
            panic!("something else was heard")
        };
        assert!(of == sight() && heard.generation == 7);
        *seen
    }

    #[test]
    fn a_picture_keeps_its_shape_and_five_digits_of_its_greatest_value() {
        let (sent, heard) = (picture(), there_and_back(Ok(picture())).unwrap());
        assert_eq!(
            (&heard.triangles, &heard.floor),
            (&sent.triangles, &sent.floor)
        );
        assert_eq!((heard.softest, heard.error), (sent.softest, sent.error));
        assert_eq!(heard.most.to_bits(), sent.most.to_bits());
        for (a, b) in heard.nodes.iter().zip(&sent.nodes) {
            assert!(a.distance(*b) < 0.001, "{a:?} {b:?}");
        }
        let near = |a: &[f64], b: &[f64], most: f64| {
            assert_eq!(a.len(), b.len());
            for (a, b) in a.iter().zip(b) {
                assert!((a - b).abs() <= 0.51e-5 * most, "{a} {b}");
            }
        };
        near(&heard.compliance, &sent.compliance, sent.most);
        near(&heard.bow, &sent.bow, 2.0e-7);
        near(&heard.tones[0].shape, &sent.tones[0].shape, 1.0);
        assert_eq!(heard.tones[0].frequency, sent.tones[0].frequency);
    }

    #[test]
    fn every_reason_comes_back() {
        let reasons = [
            WebError::NoFloor,
            WebError::TooNarrow {
                width: Length::mm(0.2),
            },
            WebError::SelfCrossing,
            WebError::TooLarge,
            WebError::Pieces,
            WebError::Unheld,
        ];
        for why in reasons {
            assert_eq!(there_and_back(Err(why)), Err(why));
        }
    }

    #[test]
    fn an_order_to_look_comes_back() {
        let order = ToWorker {
            generation: 3,
            order: Order::Look(sight()),
        };
        assert_eq!(ToWorker::decode(&order.encode()), Ok(order));
    }

    #[test]
    fn a_picture_that_does_not_hang_together_is_refused() {
        let said = FromWorker {
            generation: 1,
            report: Report::Look {
                sight: sight(),
                seen: Box::new(Ok(picture())),
            },
        };
        let text = said.encode();
        let breaks = [
            ("\"triangles\":[0,", "\"triangles\":[4,"),
            ("\"triangles\":[0,", "\"triangles\":["),
            ("\"floor\":[1,", "\"floor\":["),
            ("\"nodes_um\":[123,", "\"nodes_um\":["),
            ("\"steps\":[42632,", "\"steps\":["),
            ("\"steps\":[42632,", "\"steps\":[\"x\","),
            ("\"most_m_per_n\":", "\"most\":"),
        ];
        for (from, to) in breaks {
            assert!(text.contains(from), "{from} is not in {text}");
            assert!(FromWorker::decode(&text.replace(from, to)).is_err(), "{to}");
        }
    }
}
