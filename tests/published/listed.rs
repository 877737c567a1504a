//! Cases that nothing here answers, and printed values that disagree, each with its reason.

use crate::agreement::Listed;

const SYMBOLS: &str =
    "the meaning of a standard's symbol: used in names and texts, nothing to compute";
const FACTOR: &str = "a maker's factor on speed and feed without a formula";
const LIMIT: &str = "a maker's limit of depth for one line of cutters; the data follow others that allow one diameter";
const NO_SUCH: &str =
    "no such material in the data, or one that the source does not name closely enough";
const TURNING: &str = "constants for turning; milling lives are shorter, the data hold none";
const DRIVE: &str =
    "efficiency of a kind of drive, from memory; the data go by classes of machines";
const INDEXABLE: &str = "holds for cutters with inserts, which the data do not have";
const FITTED: &str =
    "constants of a fitted formula, from memory; the stepped beam is computed instead";
const PRODUCT: &str = "the product of two printed numbers, or their ratio: no law behind it";

/// Groups of cases that cannot be answered.
const GROUPS: &[(&str, &[&str])] = &[
    (
        SYMBOLS,
        &[
            "symbols-iso13399-APMX",
            "symbols-iso13399-DCX",
            "symbols-iso13399-DN",
            "symbols-iso13399-RE",
            "symbols-iso13399-KAPR",
            "symbols-iso13399-BHTA",
            "symbols-iso13399-CICT",
            "symbols-iso13399-SIG",
            "symbols-iso13399-TCDC",
            "symbols-iso13399-CW",
            "symbols-iso13399-CHW",
            "symbols-iso13399-IC",
            "symbols-iso13399-DCONMS",
            "symbols-iso13399-OAL",
            "symbols-iso13399-LF",
            "symbols-iso13399-AZ",
            "symbols-iso13399-AERMX",
            "symbols-iso13399-CEDC",
            "symbols-iso13399-ALP",
            "symbols-iso13399-ZEFP",
            "symbols-iso13399-NOF",
            "symbols-iso13399-LPR",
            "symbols-iso13399-LS",
            "symbols-iso13399-WT",
            "symbols-iso3002-ap",
            "symbols-iso3002-fz",
            "symbols-iso3002-vc",
            "symbols-iso3002-n",
            "symbols-iso3002-kc",
            "symbols-iso3002-hex",
            "symbols-iso513-P",
            "symbols-iso513-K",
            "symbols-iso513-N",
            "symbols-iso513-H",
        ],
    ),
    (
        FACTOR,
        &[
            "chip-speed-gain-10",
            "chip-speed-gain-15",
            "chip-speed-gain-25",
            "chip-speed-gain-30",
            "chip-speed-gain-50",
            "slot-depth-factor-025",
            "slot-depth-factor-100",
            "slot-depth-factor-150",
            "slot-router-depth-1D",
            "slot-router-depth-3D",
            "speeds-tutorial-slot-reduction",
        ],
    ),
    (
        LIMIT,
        &["slot-limit-half-hss", "slot-limit-50", "slot-plunge-solid"],
    ),
    (
        NO_SUCH,
        &[
            "kienzle-vdi39",
            "kienzle-vdi41",
            "speeds-benchmill-alloy-steel-hard",
            "speeds-chart-bronze-medium",
            "speeds-chart-stainless-17-4PH",
            "speeds-tungaloy-aluminium-hiSi",
        ],
    ),
    (
        TURNING,
        &[
            "taylor-n-ranges",
            "taylor-groover-hss-steel",
            "taylor-groover-carbide-steel",
            "taylor-groover-carbide-nonsteel",
        ],
    ),
    (
        DRIVE,
        &[
            "spindle-mh-back-gear",
            "spindle-mh-geared-head-lo",
            "spindle-mh-oil-hydraulic-lo",
            "spindle-mh-oil-hydraulic-hi",
        ],
    ),
    (
        INDEXABLE,
        &["minchip-indexable-fz-floor", "slot-mitsubishi-slot"],
    ),
    (
        FITTED,
        &["deflection-kivanc-budak-4", "deflection-kivanc-budak-3"],
    ),
    (PRODUCT, &["chip-round-example", "spindle-eff-elhofy"]),
];

/// Printed values that disagree with their own inputs; `shared/reference/README.md` says who is right.
pub(crate) const DISAGREEING: &[Listed<'static>] = &[
    (
        "chip-hm-example-ceratizit",
        "the example prints 0.15 mm; the formula and the table of the same page give 0.137 mm",
    ),
    (
        "corner-sandvik-0.4",
        "printed advice of half the feed; the path of the cutter's middle alone gives 0.6",
    ),
];

/// Cases that nothing here answers.
pub(crate) fn waiting() -> Vec<Listed<'static>> {
    let each = |(reason, ids): &(&'static str, &'static [&'static str])| {
        let reason = *reason;
        ids.iter().map(move |id| (*id, reason)).collect::<Vec<_>>()
    };
    GROUPS.iter().flat_map(each).collect()
}
