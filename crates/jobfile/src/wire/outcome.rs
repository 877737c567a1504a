//! Outcomes: strategies and refusals.

use super::{Wire, wire_enum, wire_struct};
use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, not};
use thinwright_catalog::NUMBER_IDS;
use thinwright_core::strategy::{
    Change, Decided, Defaulted, OrderReport, OrderVerdict, Outcome, Refusal, Setup, Strategy,
    TurnOver,
};
use thinwright_quantity::Length;

wire_enum!(Outcome {
    "feasible" Feasible { "strategy" 0 strategy, }
    "refused" Refused { "refusal" 0 refusal, }
});

wire_struct!(Strategy {
    "setups" setups,
    "time_s" time,
    "reckoned_s" reckoned,
    "cutter_changes" cutter_changes,
    "orders" orders,
    "defaults" defaults,
    "cautions" cautions,
    "gains" gains,
    "turn_over" turn_over,
    "web_error" web_error,
});

wire_struct!(Setup {
    "face_up" face_up,
    "hold" hold,
    "backing" backing,
    "boss_bolted" boss_bolted,
    "stock_m" stock,
    "steps" steps,
});

wire_struct!(OrderReport {
    "order" order,
    "first" first,
    "backing" backing,
    "boss_bolted" boss_bolted,
    "verdict" verdict,
    "decided" decided,
});

wire_enum!(Decided {
    "warning" Warning { "task" task task, "limit" limit limit, "utilisation" utilisation utilisation, }
    "time" Time { "longer_s" 0 longer, }
    "nothing" Nothing {}
});

wire_enum!(OrderVerdict {
    "works" Works {
        "time_s" time time,
        "warnings" warnings warnings,
        "worst" worst worst,
        "softest_web_n_per_m" softest_web softest_web,
    }
    "fails" Fails { "task" task task, "limit" limit limit, }
});

wire_struct!(Defaulted {
    "field" field,
    "value" value,
});

wire_struct!(TurnOver {
    "parts" parts,
    "total_m" total,
    "allowed_m" allowed,
});

wire_struct!(Refusal {
    "task" task,
    "tried" tried,
    "conflict" conflict,
    "gains" gains,
    "changes" changes,
    "orders" orders,
});

wire_struct!(Change {
    "field" field,
    "from_si" from,
    "to_si" to,
});

/// A contribution to an error budget: the id of its row in the table of numbers, and its size.
impl Wire for (&'static str, Length) {
    fn put(&self) -> Node {
        Node::object([("number", Node::text(self.0)), ("size_m", self.1.put())])
    }

    fn take(place: &str, node: &Node) -> Result<(&'static str, Length), JobFileError> {
        let mut object = Object::new(place, node)?;
        let id = object.text("number")?;
        let known = NUMBER_IDS.iter().find(|known| **known == id);
        let known = known.ok_or_else(|| not(&object.place("number"), Wanted::KnownName))?;
        let size = super::at(&mut object, "size_m")?;
        object.end()?;
        Ok((known, size))
    }
}
