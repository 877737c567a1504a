//! The numbers of a method with a cutter: the cheapest on the grid that a person types, found exactly.
//!
//! Step-downs, stepovers and speeds are gone through by the time that they take at best; feeds are halved. What is
//! left out is ruled out: by that time, or by a limit that is broken even at the end that is best for it
//! ([`crate::limits::Moves`]). What a candidate costs is its time and the price of the warnings that it leaves; among
//! equals the one whose closest limit is furthest away wins. Costs are whole milliseconds, shares whole millionths.

use crate::case::{Load, beam};
use crate::choice::{Axes, Choice, Feeds, Net};
use crate::job::Cutter;
use crate::judge::Scene;
use crate::limits::{LIMITS, LimitId, Move, Moves, Needs, Severity, utilisation};
use crate::look::{Candidate, Look, ms, warning_price};
use crate::methods::Method;
use crate::pass::{Detail, Pass};
use crate::strategy::Measure;
use crate::time;
use thinwright_mechanics::{kinematics, tool_beam};

/// A step-down with a stepover.
struct Node {
    /// Price at the greatest feed without any warning, ms.
    least: i64,
    net: usize,
    choice: Choice,
    pass: Pass,
}

/// The numbers that were found.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub(crate) choice: Choice,
    /// Time, s.
    pub(crate) time: f64,
    /// Time and price of the warnings, ms.
    pub(crate) price: i64,
    /// The closest limit, in millionths.
    pub(crate) closest: i64,
}

/// What came of a search for numbers.
pub(crate) enum Numbers {
    /// The cheapest.
    Cheapest(Found),
    /// None that is cheaper than asked for.
    TooDear,
    /// None at all: the limit that the nearest still break.
    Broken(LimitId, Measure),
}

/// A search for the numbers of one method with one cutter.
pub(crate) struct Seeker<'a> {
    scene: &'a Scene<'a>,
    method: &'a Method,
    pub(crate) cutter: &'a Cutter,
    axes: Axes,
    nodes: Vec<Node>,
    /// Price of the warnings that no number changes, s.
    standing: f64,
    best: Option<Found>,
    nearest: Option<(f64, usize, Choice, Pass)>,
    bound: i64,
    too_dear: bool,
    /// Feed per tooth from which on a limit refuses whatever the speed, m: of the step-down and stepover in hand.
    too_much: f64,
}

impl<'a> Seeker<'a> {
    pub(crate) fn new(scene: &'a Scene<'a>, method: &'a Method, cutter: &'a Cutter) -> Seeker<'a> {
        let axes = Axes::new(scene.job, scene.shape, cutter, method);
        let mut seeker = Seeker {
            scene,
            method,
            cutter,
            nodes: Vec::new(),
            axes,
            standing: 0.0,
            best: None,
            nearest: None,
            bound: i64::MAX,
            too_dear: false,
            too_much: f64::INFINITY,
        };
        seeker.nodes = seeker.every_node();
        if let Some(node) = seeker.nodes.first() {
            seeker.standing = seeker.standing_price(node);
        }
        for i in 0..seeker.nodes.len() {
            let node = &seeker.nodes[i];
            seeker.nodes[i].least = seeker.least_price(node, &node.choice, 0.0);
        }
        let candidates = seeker.axes.candidates(scene.job, cutter);
        scene.tally.count(|e| e.candidates += candidates);
        // Stable: what takes the same time stays in the order in which it came.
        seeker.nodes.sort_by_key(|node| node.least);
        seeker
    }

    /// Price below which there is nothing, ms.
    pub(crate) fn least(&self) -> i64 {
        self.nodes.first().map_or(i64::MAX, |node| node.least)
    }

    /// The limits that refuse candidates, a bit for each: at the ends of speed and feed of every step-down and stepover.
    pub(crate) fn broken_at_ends(&self) -> Vec<u64> {
        let mut broken = Vec::new();
        for node in &self.nodes {
            let net = &self.axes.nets[node.net];
            for n in [net.speeds.first(), net.speeds.last()]
                .into_iter()
                .flatten()
            {
                let feeds = self.axes.feeds(self.scene.job, self.cutter, net, *n);
                for place in [0, feeds.last] {
                    let choice = self.with(node, *n, feeds.at(place));
                    broken.push(self.candidate(node, &choice).every_limit().all_broken());
                }
            }
        }
        broken
    }

    /// The cheapest numbers, if they are no dearer than `bound`, ms.
    pub(crate) fn run(mut self, bound: i64) -> Numbers {
        self.bound = bound;
        for node in std::mem::take(&mut self.nodes) {
            if node.least > self.dearest() {
                self.too_dear = true;
                break;
            }
            self.look_into(&node);
        }
        match (self.best, self.nearest) {
            (Some(found), _) => Numbers::Cheapest(found),
            (None, _) if self.too_dear => Numbers::TooDear,
            (None, Some((_, limit, choice, pass))) => {
                let load = Load::new(self.scene.job, self.cutter, &choice, &pass);
                let case = (self.scene).case(self.method, self.cutter, (&choice, &pass), &load);
                let limit = &LIMITS[limit];
                let measure = crate::limits::at_worst(limit, &case);
                Numbers::Broken(limit.id, measure.unwrap_or(NOTHING_ALLOWED))
            }
            (None, None) => Numbers::Broken(LimitId::FluteLength, NOTHING_ALLOWED),
        }
    }

    /// The price above which nothing is of use, ms.
    fn dearest(&self) -> i64 {
        self.best
            .as_ref()
            .map_or(self.bound, |b| b.price.min(self.bound))
    }

    /// Every step-down with every stepover, at the greatest feed there is for them.
    fn every_node(&self) -> Vec<Node> {
        let (job, shape, cutter) = (self.scene.job, self.scene.shape, self.cutter);
        let mut nodes = Vec::with_capacity(self.axes.nets.len() * self.axes.depths.len());
        for (net, numbers) in self.axes.nets.iter().enumerate() {
            let fastest = |n: &f64| {
                let feeds = self.axes.feeds(job, cutter, numbers, *n);
                feeds.at(feeds.last)
            };
            let vf = numbers.speeds.iter().map(fastest).fold(0.0, f64::max);
            for (ap, levels) in &self.axes.depths {
                let choice = Choice {
                    vf,
                    ae: numbers.ae,
                    ap: *ap,
                    levels: *levels,
                    ..Choice::default()
                };
                nodes.push(Node {
                    least: 0,
                    net,
                    pass: (self.method.pass)(job, shape, cutter, &choice, Detail::Least),
                    choice,
                });
            }
        }
        nodes
    }

    /// Price of the warnings of limits that no number moves, s.
    fn standing_price(&self, node: &Node) -> f64 {
        let load = Load {
            tip: tool_beam::tip_compliance(&beam(self.cutter)),
            ..Load::default()
        };
        let candidate = (&node.choice, &node.pass);
        let case = (self.scene).case(self.method, self.cutter, candidate, &load);
        let fixed = LIMITS.iter().filter(|l| l.needs == Needs::Cutter);
        fixed
            .filter(|l| l.id.spec().severity == Severity::Advice)
            .map(|l| warning_price(self.scene.job, utilisation(l, &case)))
            .sum()
    }

    /// All speeds and feeds of a step-down and stepover.
    fn look_into(&mut self, node: &Node) {
        let net: Net = self.axes.nets[node.net].clone();
        let feeds = |n: f64| self.axes.feeds(self.scene.job, self.cutter, &net, n);
        let all: Vec<(f64, Feeds)> = net.speeds.iter().map(|n| (*n, feeds(*n))).collect();
        if all.len() > 1 && self.ruled_out(node, &all) {
            return;
        }
        self.too_much = f64::INFINITY;
        for (n, feeds) in all {
            // From a feed per tooth on that is too much at one speed, it is too much at any.
            let mut last = feeds.last;
            while last > 0 && self.chip(n, feeds.at(last)) >= self.too_much {
                last -= 1;
            }
            if self.chip(n, feeds.at(last)) >= self.too_much {
                continue;
            }
            let fastest = self.with(node, n, feeds.at(last));
            if self.least_price(node, &fastest, 0.0) > self.dearest() {
                // Slower speeds only take longer.
                self.too_dear = true;
                return;
            }
            self.feeds(node, (n, feeds), (last, &fastest));
        }
    }

    /// Feed per tooth, m.
    fn chip(&self, n: f64, vf: f64) -> f64 {
        kinematics::feed_per_tooth(vf, self.cutter.z, n)
    }

    /// Whether no speed and feed of a node can be of use, by limits at the ends that are best for them.
    fn ruled_out(&mut self, node: &Node, all: &[(f64, Feeds)]) -> bool {
        let z = f64::from(self.cutter.z);
        let slowest = all.iter().map(|a| a.0).fold(f64::INFINITY, f64::min);
        let ends = |pick: fn(f64, f64) -> f64, of: fn(&Feeds) -> u32, from: f64| {
            all.iter()
                .map(|(n, feeds)| self.chip(*n, feeds.at(of(feeds))))
                .fold(from, pick)
        };
        let least = ends(f64::min, |_| 0, f64::INFINITY);
        let most = ends(f64::max, |f| f.last, 0.0);
        let at = |fz: f64| self.with(node, slowest, fz * slowest * z);
        let (low, high) = (at(least), at(most));
        let (low_look, high_look) = (
            self.candidate(node, &low).whole(),
            self.candidate(node, &high).quick(),
        );
        // What speed moves as it likes, or only downwards, is not bounded by what happens at the slowest.
        let least = Look::least(&low_look, &high_look, |moves| match moves.n {
            Move::Still | Move::Harder => moves.fz,
            Move::Easier | Move::OneWay | Move::Unknown => Move::Unknown,
        });
        self.useless(node, &least, low)
    }

    /// Whether what must be reached at least is too much, and notes the limit that it breaks.
    fn useless(&mut self, node: &Node, least: &Look, at: Choice) -> bool {
        if let Some(limit) = least.broken() {
            self.note(least.0[limit], limit, (at, node));
            return true;
        }
        let dear = ms(self.least_time(node) + least.penalty(self.scene.job)) > self.dearest();
        self.too_dear |= dear;
        dear
    }

    fn least_time(&self, node: &Node) -> f64 {
        self.time(node, &node.choice) + self.standing
    }

    /// The best feed at a speed, up to the place `last`, where the feed is that of `fastest`.
    fn feeds(&mut self, node: &Node, (n, feeds): (f64, Feeds), (last, fastest): (u32, &Choice)) {
        let high = self.candidate(node, fastest).whole();
        if self.offer(node, fastest, &high) || last == 0 {
            return;
        }
        let first = self.with(node, n, feeds.at(0));
        let low = self.candidate(node, &first).whole();
        self.offer(node, &first, &low);
        self.halve(node, (n, feeds), (0, &low), (last, &high));
    }

    /// The feeds between two that have been looked at.
    fn halve(
        &mut self,
        node: &Node,
        (n, feeds): (f64, Feeds),
        (i, a): (u32, &Look),
        (j, b): (u32, &Look),
    ) {
        if j - i < 2 {
            return;
        }
        let next = self.with(node, n, feeds.at(j - 1));
        let least = Look::least(a, b, |moves| moves.fz);
        if let Some(limit) = least.broken() {
            self.note(least.0[limit], limit, (next, node));
            return;
        }
        if self.least_price(node, &next, least.penalty(self.scene.job)) > self.dearest() {
            self.too_dear = true;
            return;
        }
        let m = i + (j - i) / 2;
        let choice = self.with(node, n, feeds.at(m));
        let middle = self.candidate(node, &choice).whole();
        let clean = self.offer(node, &choice, &middle);
        self.halve(node, (n, feeds), (m, &middle), (j, b));
        if !clean {
            self.halve(node, (n, feeds), (i, a), (m, &middle));
        }
    }

    fn with(&self, node: &Node, n: f64, vf: f64) -> Choice {
        Choice {
            n,
            vf,
            fz: kinematics::feed_per_tooth(vf, self.cutter.z, n),
            ..node.choice
        }
    }

    fn time(&self, node: &Node, choice: &Choice) -> f64 {
        self.scene.tally.count(|e| e.checks += 1);
        time::step(self.scene.job, self.scene.shape, choice, &node.pass)
    }

    fn least_price(&self, node: &Node, choice: &Choice, penalty: f64) -> i64 {
        ms(self.time(node, choice) + self.standing + penalty)
    }

    fn candidate<'b>(&'b self, node: &'b Node, choice: &'b Choice) -> Candidate<'b> {
        Candidate {
            scene: self.scene,
            method: self.method,
            cutter: self.cutter,
            choice,
            pass: &node.pass,
        }
    }

    /// Takes a candidate if it is the best so far; tells whether it leaves no warning.
    fn offer(&mut self, node: &Node, choice: &Choice, look: &Look) -> bool {
        if let Some(limit) = look.broken() {
            let moves = LIMITS[limit].moves;
            if moves.fz == Move::Harder && moves.n == Move::Still {
                self.too_much = self.too_much.min(choice.fz);
            } else if moves == Moves::STILL {
                self.too_much = 0.0;
            }
            self.note(look.0[limit], limit, (*choice, node));
            return false;
        }
        let penalty = look.penalty(self.scene.job);
        if self.least_price(node, choice, penalty) > self.dearest() {
            self.too_dear = true;
            return penalty <= 0.0;
        }
        let (job, shape) = (self.scene.job, self.scene.shape);
        let pass = (self.method.pass)(job, shape, self.cutter, choice, Detail::Exact);
        let time = time::step(job, shape, choice, &pass);
        let price = ms(time + self.standing + penalty);
        let closest = look.closest();
        let better = |b: &Found| (price, closest) < (b.price, b.closest);
        if price <= self.bound && self.best.as_ref().is_none_or(better) {
            self.best = Some(Found {
                choice: *choice,
                time,
                price,
                closest,
            });
        }
        self.too_dear |= price > self.bound;
        penalty <= 0.0
    }

    fn note(&mut self, by: f64, limit: usize, (choice, node): (Choice, &Node)) {
        if self.nearest.as_ref().is_none_or(|n| by < n.0) {
            self.nearest = Some((by, limit, choice, node.pass));
        }
    }
}

/// What is told where nothing could be tried.
const NOTHING_ALLOWED: Measure = Measure {
    demand: 1.0,
    allowed: 0.0,
};
