//! Orders of the work in words: what each is, why it was chosen, and the figure that set it aside.

use crate::Speaker;
use crate::language::tr;
use crate::limits::limit_name;
use crate::say;
use crate::setups::face;
use crate::tasks::task_name;
use crate::text::plural;
use crate::verdicts::utilisation;
use thinwright_core::field::Table;
use thinwright_core::order::OrderId;
use thinwright_core::strategy::{Decided, OrderReport, OrderVerdict};

/// An order's name.
pub fn order_name(order: OrderId) -> &'static str {
    tr(match order {
        OrderId::OneFace => "all from one face",
        OrderId::SlotsIntoStock => "slots blind, into stock that the second recess removes",
        OrderId::SlotsBeforeSkim => "slots before the last skim of the floor",
        OrderId::SlotsLast => "slots last, through the finished web",
        OrderId::NoSlots => "recesses only",
    })
}

/// What speaks for an order.
pub fn order_why(order: OrderId) -> &'static str {
    tr(match order {
        OrderId::OneFace => "nothing is turned over, so no second datum is to be found",
        OrderId::SlotsIntoStock => "the slots are cut while the web still rests on solid stock",
        OrderId::SlotsBeforeSkim => {
            "the skim comes after the slots have let the web move, and takes their burr"
        }
        OrderId::SlotsLast => "the web is whole, and stiff, for every cut but the last ones",
        OrderId::NoSlots => "there are no slots to place",
    })
}

/// The orders that tell something new, in their order, and how many are left out: the first of each order, the first of
/// each way of backing and bolting, the first of each face.
pub fn telling(orders: &[OrderReport]) -> (Vec<&OrderReport>, u32) {
    let mut told: Vec<&OrderReport> = Vec::new();
    for report in orders {
        let new = told.iter().all(|t| t.order != report.order)
            || told
                .iter()
                .all(|t| (&t.backing, t.boss_bolted) != (&report.backing, report.boss_bolted))
            || told.iter().all(|t| t.first != report.first);
        if new {
            told.push(report);
        }
    }
    let rest = u32::try_from(orders.len() - told.len()).unwrap_or(u32::MAX);
    (told, rest)
}

impl Speaker<'_> {
    /// An order with its holding: `slots last ..., face A first, backed by machined plug, boss bolted`.
    pub fn order(&self, report: &OrderReport) -> String {
        let mut out = vec![order_name(report.order).to_owned()];
        if report.order != OrderId::OneFace {
            out.push(say!("{face} first", face = face(report.first)));
            out.push(if report.backing == "none" {
                tr("web not backed").to_owned()
            } else {
                let backing = self.row(Table::Backings, &report.backing);
                say!("web backed: {backing}", backing)
            });
            if report.boss_bolted {
                out.push(tr("boss bolted").to_owned());
            }
        }
        out.join(", ")
    }

    /// The figures of an order.
    pub fn order_figures(&self, report: &OrderReport) -> String {
        match &report.verdict {
            OrderVerdict::Works {
                time,
                warnings,
                worst,
                softest_web,
            } => {
                let mut out = vec![self.time(*time)];
                if let Some(web) = softest_web {
                    out.push(say!(
                        "softest web {stiffness}",
                        stiffness = self.stiffness(*web)
                    ));
                }
                out.push(match worst {
                    Some((limit, u)) => say!(
                        "{warnings}, worst {limit} {utilisation}",
                        warnings = plural(*warnings, "warning", "warnings"),
                        limit = limit_name(*limit),
                        utilisation = utilisation(*u)
                    ),
                    None => tr("no warning").to_owned(),
                });
                out.join(", ")
            }
            OrderVerdict::Fails { task, limit } => match limit {
                Some(limit) => say!(
                    "no way to {task}: {limit} stands in the way",
                    task = task_name(*task),
                    limit = limit_name(*limit)
                ),
                None => say!("no way to {task}", task = task_name(*task)),
            },
        }
    }

    /// Why an order was set aside for the chosen one: its figures, and the one that decided.
    pub fn set_aside(&self, report: &OrderReport) -> String {
        let figures = self.order_figures(report);
        match &report.decided {
            None => figures,
            Some(Decided::Warning {
                task,
                limit,
                utilisation: u,
            }) => {
                let (limit, task) = (limit_name(*limit), task_name(*task));
                match u {
                    None => say!(
                        "{figures}: leaves {limit} on the step that is to {task}",
                        figures,
                        limit,
                        task
                    ),
                    Some(u) => say!(
                        "{figures}: leaves {limit} {utilisation} on the step that is to {task}",
                        figures,
                        limit,
                        utilisation = utilisation(*u),
                        task
                    ),
                }
            }
            Some(Decided::Time(longer)) => say!(
                "{figures}: {time} longer",
                figures,
                time = self.time(*longer)
            ),
            Some(Decided::Nothing) => say!("{figures}: no better in the whole", figures),
        }
    }
}
